#pragma once

// LibraryActions: what the place called Library does to the textures that are chosen.

#include <QObject>

#include "catalogue/actions.h"
#include "desktop/action_table.h"
#include "desktop/app_context.h"
#include "desktop/chosen_textures.h"
#include "desktop/dialogs/words_dialog.h"
#include "desktop/jobs/background_job.h"
#include "desktop/jobs/filters_job.h"
#include "desktop/jobs/library_edits.h"
#include "desktop/views/filter_pane.h"

class QWidget;

namespace pantile::desktop {

class NoticeBar;
class SearchBar;

class LibraryActions : public QObject {
    Q_OBJECT

public:
    /// All must outlive it.
    LibraryActions(AppContext& context, Actions& actions, ChosenTextures& chosen,
                   NoticeBar& notices, SearchBar& search, QWidget* page);

    FilterPane* filterPane() const { return m_filters; }

    /// Makes the texture what it was after that revision.
    void revert(core::TextureId id, int revision);

    /// Reads the counts anew.
    void renew();

    /// For closing: what was asked for is done.
    void finishAll();

Q_SIGNALS:
    void libraryChanged();

    /// What there is to complete words from.
    void filtersRead(const LibraryFilters& filters);

private:
    /// Undoes or redoes one action.
    using Turn = core::Result<catalogue::UndoneAction> (*)(catalogue::Library&);

    void connectActions();
    void connectFilters();
    void editWords();
    void setStars(int stars);
    void remove();
    void recover();
    void putOnShelf();
    void takeFromShelf();
    void putOn(const QString& shelf, const std::vector<core::TextureId>& ids);
    void addTag(const QString& tag, const std::vector<core::TextureId>& ids);
    void saveSearch();
    void renameFilter();

    /// The one chosen at the side; if none is, the window says so.
    std::optional<FilterPane::Chosen> namedFilter();
    void dropFilter();
    void undo();
    void redo();
    void turn(Turn one, const QString& words);
    void showSteps(const LibraryFilters& filters);
    void changeWords(const std::vector<core::TextureId>& ids, const WordsChange& change);
    std::vector<std::string> shelfNames() const;

    AppContext& m_context;
    Actions& m_actions;
    ChosenTextures& m_chosen;
    NoticeBar& m_notices;
    SearchBar& m_search;
    QWidget* m_page;
    FilterPane* m_filters;
    std::vector<catalogue::Shelf> m_shelves;
    LibraryEdits m_edits;
    BackgroundJob<LibraryFilters> m_reading;
};

}  // namespace pantile::desktop
