#include "desktop/views/notice_bar.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QPlainTextEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>

#include "desktop/theme/apply_theme.h"
#include "desktop/views/plain_label.h"

namespace pantile::desktop {

NoticeBar::NoticeBar(const Theme& theme, QWidget* parent)
    : QWidget(parent),
      m_mark(new Mark(MarkKind::Done, theme, this)),
      m_text(new PlainLabel(this)),
      m_lines(new QPlainTextEdit(this)),
      m_progress(new QProgressBar(this)),
      m_stop(new QPushButton(tr("Stop"), this)),
      m_dismiss(new QPushButton(tr("Dismiss"), this)) {
    setObjectName(QStringLiteral("noticeBar"));
    m_text->setObjectName(QStringLiteral("notice"));
    m_lines->setObjectName(QStringLiteral("noticeLines"));
    m_lines->setAccessibleName(tr("What there is to say of each"));
    m_lines->setReadOnly(true);
    m_lines->setTabChangesFocus(true);
    m_progress->setObjectName(QStringLiteral("progress"));
    m_progress->setAccessibleName(tr("Progress"));
    m_progress->setTextVisible(false);
    m_stop->setObjectName(QStringLiteral("stop"));
    m_dismiss->setObjectName(QStringLiteral("dismiss"));

    auto* const words = new QVBoxLayout;
    words->setSpacing(kGap);
    words->addWidget(m_text);
    words->addWidget(m_progress);
    words->addWidget(m_lines);
    auto* const layout = new QHBoxLayout(this);
    layout->setContentsMargins(2 * kGap, kGap, 2 * kGap, kGap);
    layout->setSpacing(kGap);
    layout->addWidget(m_mark, 0, Qt::AlignTop);
    layout->addLayout(words, 1);
    layout->addWidget(m_stop, 0, Qt::AlignTop);
    layout->addWidget(m_dismiss, 0, Qt::AlignTop);

    setAttribute(Qt::WA_StyledBackground);  // A subclass takes its colour from the sheet only so.
    connect(m_stop, &QPushButton::clicked, this, &NoticeBar::stopAsked);
    connect(m_dismiss, &QPushButton::clicked, this, &QWidget::hide);
    hide();
}

void NoticeBar::showNotice(const Notice& notice) {
    constexpr int kMostLines = 6;
    m_mark->setKind(notice.kind);
    m_text->setText(notice.text);
    m_lines->setPlainText(notice.lines.join(QLatin1Char('\n')));
    const int shown = std::min(static_cast<int>(notice.lines.size()), kMostLines);
    m_lines->setFixedHeight(shown * m_lines->fontMetrics().lineSpacing() + 2 * kGap);
    m_mark->show();
    m_lines->setVisible(!notice.lines.isEmpty());
    m_progress->hide();
    m_stop->hide();
    m_dismiss->show();
    show();
}

void NoticeBar::showProgress(int done, int total, const QString& what) {
    m_text->setText(what);
    m_progress->setRange(0, total);
    m_progress->setValue(done);
    m_mark->hide();
    m_lines->hide();
    m_progress->show();
    m_stop->show();
    m_dismiss->hide();
    show();
}

}  // namespace pantile::desktop
