#pragma once

#include <QComboBox>

#include "desktop/theme/theme.h"

namespace pantile::desktop {

/// A box to choose one of several from, with an arrow of our own: a style sheet takes the
/// platform's away.
class ChoiceBox : public QComboBox {
    Q_OBJECT

public:
    /// The theme must outlive it.
    ChoiceBox(const Theme& theme, QWidget* parent) : QComboBox(parent), m_theme(theme) {}

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const Theme& m_theme;
};

}  // namespace pantile::desktop
