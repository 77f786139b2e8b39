#include "desktop/views/action_button.h"

#include <QAction>
#include <QPushButton>

namespace pantile::desktop {

QPushButton* makeActionButton(QAction& action, const QString& text, QWidget* parent) {
    auto* const button = new QPushButton(text, parent);
    button->setObjectName(action.objectName() + QStringLiteral("Button"));
    button->setCheckable(action.isCheckable());
    const auto follow = [button, &action] {
        button->setToolTip(action.statusTip() + QStringLiteral(" (") +
                           action.shortcut().toString(QKeySequence::NativeText) + QLatin1Char(')'));
        button->setEnabled(action.isEnabled());
        button->setChecked(action.isChecked());
    };
    follow();
    QObject::connect(&action, &QAction::changed, button, follow);
    // A click turns the button over; the action may have stayed as it was, as one of several does.
    QObject::connect(button, &QPushButton::clicked, &action, [follow, &action] {
        action.trigger();
        follow();
    });
    return button;
}

QPushButton* makeNextButton(QAction& action, const QString& text, QWidget* parent) {
    QPushButton* const button = makeActionButton(action, text, parent);
    button->setProperty("next", true);
    return button;
}

void addButtonKey(QWidget& heard, const QKeySequence& keys, QPushButton& button) {
    auto* const action = new QAction(&heard);
    action->setShortcut(keys);
    action->setShortcutContext(Qt::WidgetShortcut);
    heard.addAction(action);
    QObject::connect(action, &QAction::triggered, &button, &QPushButton::click);
}

}  // namespace pantile::desktop
