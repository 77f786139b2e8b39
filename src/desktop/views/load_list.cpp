#include "desktop/views/load_list.h"

#include <algorithm>

#include <QDragEnterEvent>
#include <QDropEvent>
#include <QMimeData>

#include "desktop/models/texture_mime.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

namespace {

constexpr int kNameRole = Qt::UserRole;
constexpr int kShownLoads = 5;

std::string nameOf(const QListWidgetItem& item) {
    return item.data(kNameRole).toString().toStdString();
}

QString loadWords(const catalogue::StoredLoad& load) {
    const QString textures =
        counted("LoadList", "%1 texture", "%1 textures", std::ssize(load.slots));
    const QString written =
        load.writings.empty() ? LoadList::tr("not written")
                              : LoadList::tr("written %1").arg(shownTime(load.writings.back().at));
    const QString board =
        load.canvas.empty()
            ? shownText(load.board)
            : LoadList::tr("%1, canvas %2").arg(shownText(load.board), shownText(load.canvas));
    return QStringLiteral("%1\n%2 · %3 · %4").arg(shownText(load.name), board, textures, written);
}

}  // namespace

LoadList::LoadList(QWidget* parent) : QListWidget(parent) {
    setObjectName(QStringLiteral("loadList"));
    setAccessibleName(tr("Loads"));
    setAcceptDrops(true);
    setTextElideMode(Qt::ElideRight);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(this, &QListWidget::currentItemChanged, this, [this](QListWidgetItem* item) {
        if (item != nullptr) Q_EMIT asked(nameOf(*item));
    });
}

void LoadList::showLoads(const std::vector<catalogue::StoredLoad>& loads,
                         const std::string& current) {
    const QSignalBlocker quiet(this);
    clear();
    for (const catalogue::StoredLoad& load : loads) {
        auto* const item = new QListWidgetItem(loadWords(load), this);
        item->setData(kNameRole, QString::fromStdString(load.name));
        if (load.name == current) setCurrentItem(item);
    }
    const int shown = std::clamp(count(), 1, kShownLoads);
    setFixedHeight(shown * (2 * fontMetrics().height() + kGap) + kGap);
    setVisible(count() > 0);
}

void LoadList::dragEnterEvent(QDragEnterEvent* event) {
    acceptTextures(*event);
}

void LoadList::dragMoveEvent(QDragMoveEvent* event) {
    if (itemAt(event->position().toPoint()) == nullptr) return event->ignore();
    acceptTextures(*event);
}

void LoadList::dropEvent(QDropEvent* event) {
    const QListWidgetItem* const item = itemAt(event->position().toPoint());
    const std::vector<core::TextureId> ids = textureIdsIn(*event->mimeData());
    if (item == nullptr || ids.empty()) return event->ignore();
    event->setDropAction(Qt::CopyAction);
    event->accept();
    Q_EMIT dropped(nameOf(*item), ids, loadIn(*event->mimeData()));
}

}  // namespace pantile::desktop
