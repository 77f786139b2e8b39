#include "desktop/views/revision_list.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/plain_label.h"

namespace pantile::desktop {

namespace {

constexpr std::size_t kMostRevisions = 30;  // Older ones by the command line.

QString kindWords(catalogue::RevisionKind kind) {
    using catalogue::RevisionKind;
    switch (kind) {
        case RevisionKind::Added:
            return RevisionList::tr("added");
        case RevisionKind::Text:
            return RevisionList::tr("words");
        case RevisionKind::Tags:
            return RevisionList::tr("tags");
        case RevisionKind::Removed:
            return RevisionList::tr("removed");
        case RevisionKind::Recovered:
            return RevisionList::tr("brought back");
        case RevisionKind::Reverted:
            return RevisionList::tr("gone back");
        case RevisionKind::Content:
            return RevisionList::tr("touched up");
    }
    return {};
}

}  // namespace

RevisionList::RevisionList(QWidget* parent) : QWidget(parent), m_lines(new QVBoxLayout(this)) {
    setObjectName(QStringLiteral("revisions"));
    m_lines->setContentsMargins({});
    m_lines->setSpacing(kGap / 2);
}

void RevisionList::showRevisions(const std::vector<catalogue::Revision>& revisions) {
    qDeleteAll(findChildren<QWidget*>(Qt::FindDirectChildrenOnly));
    auto* const heading = new PlainLabel(this);
    QFont bold = heading->font();
    bold.setBold(true);
    heading->setFont(bold);
    heading->setText(tr("Revisions"));
    m_lines->addWidget(heading);
    const std::size_t shown = std::min(kMostRevisions, revisions.size());
    for (std::size_t i = 0; i < shown; ++i) addLine(revisions[revisions.size() - 1 - i], i == 0);
}

void RevisionList::addLine(const catalogue::Revision& revision, bool isNewest) {
    auto* const row = new QWidget(this);
    auto* const line = new QHBoxLayout(row);
    line->setContentsMargins({});
    line->setSpacing(kGap);
    auto* const words = new PlainLabel(row);
    words->setText(tr("%1: %2, %3")
                       .arg(revision.number)
                       .arg(kindWords(revision.kind))
                       .arg(shownTime(revision.at)));
    line->addWidget(words, 1);
    if (!isNewest) {
        auto* const back = new QPushButton(tr("Go back"), row);
        back->setObjectName(QStringLiteral("revert%1").arg(revision.number));
        back->setAccessibleName(tr("Go back to revision %1").arg(revision.number));
        connect(back, &QPushButton::clicked, this,
                [this, number = revision.number] { Q_EMIT revertAsked(number); });
        line->addWidget(back);
    }
    m_lines->addWidget(row);
}

}  // namespace pantile::desktop
