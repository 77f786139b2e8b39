#pragma once

#include <QLineEdit>

namespace pantile::desktop {

/// A line of text that leaves pasting to the window where the clipboard holds no line of text, and
/// that Down leaves and Escape empties.
class SearchField : public QLineEdit {
    Q_OBJECT

public:
    explicit SearchField(QWidget* parent);

Q_SIGNALS:
    void left();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
};

}  // namespace pantile::desktop
