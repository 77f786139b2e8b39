#include "desktop/views/heading.h"

#include <QLabel>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

QLabel* makeHeading(const QString& words, QWidget* parent) {
    auto* const heading = new QLabel(words, parent);
    heading->setFont(headingFont());
    return heading;
}

}  // namespace pantile::desktop
