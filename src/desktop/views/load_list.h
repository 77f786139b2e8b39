#pragma once

#include <vector>

#include <QListWidget>

#include "catalogue/loads.h"
#include "core/ids.h"

namespace pantile::desktop {

/// All loads of the library; what is dropped on one is put in it.
class LoadList : public QListWidget {
    Q_OBJECT

public:
    explicit LoadList(QWidget* parent);

    void showLoads(const std::vector<catalogue::StoredLoad>& loads, const std::string& current);

Q_SIGNALS:
    void asked(const std::string& load);

    /// `from` as in TrayView.
    void dropped(const std::string& load, const std::vector<core::TextureId>& ids,
                 const std::string& from);

protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dragMoveEvent(QDragMoveEvent* event) override;
    void dropEvent(QDropEvent* event) override;
};

}  // namespace pantile::desktop
