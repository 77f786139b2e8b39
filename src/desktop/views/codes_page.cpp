#include "desktop/views/codes_page.h"

#include <QVBoxLayout>

#include "desktop/texts.h"
#include "desktop/views/folding_splitter.h"
#include "desktop/views/notice_bar.h"
#include "desktop/views/read_bench.h"
#include "desktop/views/share_bench.h"

namespace pantile::desktop {

namespace {

constexpr int kRoomForBenches = 760;  // With less width they stand one above the other.

}  // namespace

CodesPage::CodesPage(AppContext& context, Actions& actions, const ChosenTextures& chosen,
                     NoticeBar& notices, QWidget* parent)
    : QWidget(parent),
      m_share(new ShareBench(context, actions, chosen, this)),
      m_read(new ReadBench(context, actions, this)) {
    setObjectName(QStringLiteral("codesPage"));
    auto* const benches = new FoldingSplitter(kRoomForBenches, this);
    benches->addWidget(m_share);
    benches->addWidget(m_read);
    benches->setStretchFactor(0, 1);
    benches->setStretchFactor(1, 1);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    layout->addWidget(benches);
    connect(m_share, &ShareBench::copied, &notices, [&notices](int posts, std::int64_t characters) {
        const QString copied = counted("CodesPage", "Copied %1 post", "Copied %1 posts", posts);
        notices.showNotice(
            {MarkKind::Done, tr("%1, %2 characters.").arg(copied).arg(characters), {}});
    });
    connect(m_read, &ReadBench::addAsked, this, &CodesPage::addAsked);
}

void CodesPage::stopAndWait() {
    m_share->stopAndWait();
    m_read->stopAndWait();
}

void CodesPage::renew() {
    m_share->renew();
    m_read->renew();
}

}  // namespace pantile::desktop
