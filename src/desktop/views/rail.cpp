#include "desktop/views/rail.h"

#include <QPushButton>
#include <QVBoxLayout>

#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"

namespace pantile::desktop {

Rail::Rail(QWidget* parent) : QWidget(parent), m_words(new QVBoxLayout) {
    setObjectName(QStringLiteral("rail"));
    setAttribute(Qt::WA_StyledBackground);  // A subclass takes its colour from the sheet only so.
    m_words->setSpacing(0);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 2 * kGap, 0, kGap);
    layout->addLayout(m_words);
    layout->addStretch();
}

void Rail::addPlace(QAction& action, const QString& word) {
    QPushButton* const button = makeActionButton(action, word, this);
    // The word of the place that is shown is bold, which its size hint does not know.
    QFont bold = button->font();
    bold.setBold(true);
    button->setMinimumWidth(QFontMetrics(bold).horizontalAdvance(word) + 5 * kGap);
    m_words->addWidget(button);
}

}  // namespace pantile::desktop
