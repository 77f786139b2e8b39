#pragma once

class QAction;
class QKeySequence;
class QPushButton;
class QString;
class QWidget;

namespace pantile::desktop {

/// A button for an action of the table: follows whether it is enabled and, for a switch, on. `text`
/// is the action's without menu marks.
QPushButton* makeActionButton(QAction& action, const QString& text, QWidget* parent);

/// The same, shown as the one thing to do next.
QPushButton* makeNextButton(QAction& action, const QString& text, QWidget* parent);

/// A key that presses a button while `heard` has the keys.
void addButtonKey(QWidget& heard, const QKeySequence& keys, QPushButton& button);

}  // namespace pantile::desktop
