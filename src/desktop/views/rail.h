#pragma once

#include <QWidget>

#include "desktop/action_table.h"

class QVBoxLayout;

namespace pantile::desktop {

/// The narrow rail of words that leads between the places of the window.
class Rail : public QWidget {
    Q_OBJECT

public:
    explicit Rail(QWidget* parent);

    /// A word for a place, whose action is a switch.
    void addPlace(QAction& action, const QString& word);

private:
    QVBoxLayout* m_words;
};

}  // namespace pantile::desktop
