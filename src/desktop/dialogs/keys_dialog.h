#pragma once

#include <QDialog>

namespace pantile::desktop {

/// The list of all keys, made from the table of actions.
class KeysDialog : public QDialog {
    Q_OBJECT

public:
    explicit KeysDialog(QWidget* parent);
};

}  // namespace pantile::desktop
