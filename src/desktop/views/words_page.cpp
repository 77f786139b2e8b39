#include "desktop/views/words_page.h"

#include <QPushButton>
#include <QVBoxLayout>

#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/plain_label.h"

namespace pantile::desktop {

WordsPage::WordsPage(QAction& action, const QString& what, QWidget* parent)
    : QWidget(parent), m_words(new PlainLabel(this)) {
    m_words->setObjectName(QStringLiteral("words"));
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(2 * kGap, 3 * kGap, 2 * kGap, 2 * kGap);
    layout->setSpacing(2 * kGap);
    layout->addWidget(m_words);
    layout->addWidget(makeActionButton(action, what, this), 0, Qt::AlignLeft);
    layout->addStretch();
}

void WordsPage::setWords(const QString& words) {
    m_words->setText(words);
}

}  // namespace pantile::desktop
