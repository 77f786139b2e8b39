#pragma once

#include <QWidget>

#include "desktop/action_table.h"
#include "desktop/app_context.h"
#include "desktop/chosen_textures.h"
#include "desktop/dialogs/adder.h"
#include "desktop/dialogs/library_actions.h"
#include "desktop/jobs/background_job.h"
#include "desktop/jobs/details_job.h"
#include "desktop/jobs/find_job.h"
#include "desktop/jobs/gatherer.h"
#include "desktop/jobs/library_watch.h"

class QPushButton;
class QStackedWidget;

namespace pantile::desktop {

class DetailPane;
class NoticeBar;
class PlainLabel;
class SearchBar;
class TextureGridView;
class TextureModel;

/// The place called Library: the wall of textures, the search above it, the bench beside it.
class LibraryPage : public QWidget {
    Q_OBJECT

public:
    /// All must outlive it.
    LibraryPage(AppContext& context, Actions& actions, ChosenTextures& chosen, NoticeBar& notices,
                QWidget* parent);

    /// Adds it behind, once it is known how; what becomes of it is said in the page.
    void gather(GatherRequest request, AskFor asked = AskFor::LargePictures);

    /// Nothing was found because there is nothing.
    bool isEmpty() const { return m_all == 0; }

    /// What is shown is read anew, as something was changed elsewhere.
    void renew();

    bool isGathering() const { return m_adder.isRunning() || m_gatherer.isRunning(); }

    /// For closing: everything that runs is stopped and has ended when it returns.
    void stopAndWait();

Q_SIGNALS:
    /// By this window or by another program.
    void libraryChanged();

    /// The search was answered.
    void found();
    void shelvesRead(const QStringList& names);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void makeLayout();
    void connectParts();
    void connectActions();

    void find();
    void showFound(const core::Result<FindAnswer>& answer);
    void showCounts();
    void tellChosen();
    void chosen();
    void showDetails(const core::Result<TextureDetails>& details);
    void gathered(const core::Result<tasks::GatherReport>& report);
    void copyCode();
    void arrange();

    AppContext& m_context;
    Actions& m_actions;
    ChosenTextures& m_chosen;
    NoticeBar& m_notices;
    TextureModel* m_model;
    SearchBar* m_search;
    PlainLabel* m_counts;
    TextureGridView* m_grid;
    DetailPane* m_details;
    LibraryActions* m_organising;
    QWidget* m_emptyWall;
    QWidget* m_nothingFound;
    QStackedWidget* m_wall;
    QPushButton* m_addButton;

    std::int64_t m_all = 0;                   ///< Textures in the library.
    std::vector<core::TextureId> m_toSelect;  ///< Just added; selected once they are found.
    std::optional<core::TextureId> m_shownDetails;
    bool m_hasRoomForBoth = true;
    bool m_hasRoomForFilters = true;
    Adder m_adder;
    Gatherer m_gatherer;
    LibraryWatch m_watch;
    BackgroundJob<FindAnswer> m_finding;
    BackgroundJob<TextureDetails> m_reading;
    BackgroundJob<QString> m_encoding;
};

}  // namespace pantile::desktop
