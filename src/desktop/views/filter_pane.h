#pragma once

#include <optional>

#include <QTreeWidget>

#include "core/ids.h"
#include "desktop/jobs/filters_job.h"

namespace pantile::desktop {

/// Shelves, tags and saved searches with counts: choosing one filters by it, dropping textures on a
/// shelf or tag puts them there.
class FilterPane : public QTreeWidget {
    Q_OBJECT

public:
    explicit FilterPane(QWidget* parent);

    void showFilters(const LibraryFilters& filters);

    struct Chosen {
        enum class Kind { All, Shelf, Tag, Search, Removed };
        Kind kind = Kind::All;
        std::string name;
        std::string query;
        std::string sort;  ///< Of a saved search.
    };

    /// The row that the keys stand on; nothing on a heading.
    std::optional<Chosen> current() const;

    /// Whether that is a shelf, a tag or a saved search.
    bool isNamed() const;

    /// Marks the row that stands for this query, or none.
    void markQuery(const QString& query);

Q_SIGNALS:
    void asked(const QString& query, const QString& sort);
    void droppedOnShelf(const QString& name, const std::vector<core::TextureId>& ids);
    void droppedOnTag(const QString& name, const std::vector<core::TextureId>& ids);

    /// The current row, which has a name of its own.
    void renameAsked();
    void dropAsked();

    /// Of a shelf, from 1.
    void shelfMoved(const QString& name, int place);

protected:
    bool event(QEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dragMoveEvent(QDragMoveEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QTreeWidgetItem* addHeading(const QString& words);
    void addRow(QTreeWidgetItem* heading, const Chosen& chosen, const QString& words,
                std::int64_t count);
    const Chosen* chosenOf(const QTreeWidgetItem* item) const;
    void ask(QTreeWidgetItem* item);
    bool takes(QDropEvent& event) const;

    std::vector<Chosen> m_rows;
    QString m_query;
};

}  // namespace pantile::desktop
