#include "desktop/dialogs/library_actions.h"

#include <array>
#include <memory>

#include <QAction>
#include <QWidget>

#include "catalogue/actions.h"
#include "catalogue/edit.h"
#include "catalogue/history.h"
#include "catalogue/reader.h"
#include "catalogue/searches.h"
#include "catalogue/shelves.h"
#include "catalogue/tags.h"
#include "desktop/texts.h"
#include "desktop/views/filter_pane.h"
#include "desktop/views/notice_bar.h"
#include "desktop/views/search_bar.h"
#include "tasks/keep_estimates.h"
#include "tasks/undo.h"

namespace pantile::desktop {

using core::Result;
using core::TextureId;
using Ids = std::vector<TextureId>;

namespace {

constexpr std::array kStarActions = {ActionId::NoStars,   ActionId::OneStar,
                                     ActionId::TwoStars,  ActionId::ThreeStars,
                                     ActionId::FourStars, ActionId::FiveStars};

QString changedWords(std::int64_t changed) {
    return counted("LibraryActions", "Changed %1 texture.", "Changed %1 textures.", changed);
}

/// Of a picture that may be an older one, whose cost was forgotten.
void keepCost(catalogue::Library& library, TextureId id) {
    if (const auto record = catalogue::readTexture(library, id))
        tasks::knownEstimate(library, *record);
}

// Words and tags together are one change.
Result<std::int64_t> applyWords(catalogue::Library& library, const Ids& ids,
                                const WordsChange& change) {
    PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
    catalogue::nameAction(library, "Change the words of " + catalogue::texturesInWords(ids));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t texts,
                             catalogue::setText(library, ids, change.patch));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t tags,
                             catalogue::changeTags(library, ids, change.add, change.drop));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return std::max(texts, tags);
}

}  // namespace

LibraryActions::LibraryActions(AppContext& context, Actions& actions, ChosenTextures& chosen,
                               NoticeBar& notices, SearchBar& search, QWidget* page)
    : QObject(page),
      m_context(context),
      m_actions(actions),
      m_chosen(chosen),
      m_notices(notices),
      m_search(search),
      m_page(page),
      m_filters(new FilterPane(page)),
      m_edits(context.libraryPath, context.jobs, this),
      m_reading(context.jobs) {
    connectActions();
    connectFilters();
    connect(&m_edits, &LibraryEdits::done, this, [this](const QString& words) {
        m_notices.showNotice({MarkKind::Done, words, {}});
        Q_EMIT libraryChanged();
    });
    connect(&m_edits, &LibraryEdits::failed, this, [this](const core::Error& error) {
        m_notices.showNotice({MarkKind::Caution, shownError(error), {}});
    });
    renew();
}

void LibraryActions::connectActions() {
    const auto on = [this](ActionId id, auto&& slot) {
        connect(&m_actions[id], &QAction::triggered, this, slot);
    };
    on(ActionId::EditWords, [this] { editWords(); });
    on(ActionId::PutOnShelf, [this] { putOnShelf(); });
    on(ActionId::TakeFromShelf, [this] { takeFromShelf(); });
    on(ActionId::Remove, [this] { remove(); });
    on(ActionId::Recover, [this] { recover(); });
    on(ActionId::UndoInLibrary, [this] { undo(); });
    on(ActionId::RedoInLibrary, [this] { redo(); });
    for (const ActionId id : {ActionId::UndoInLibrary, ActionId::RedoInLibrary})
        m_page->addAction(&m_actions[id]);
    on(ActionId::SaveSearch, [this] { saveSearch(); });
    on(ActionId::RenameFilter, [this] { renameFilter(); });
    on(ActionId::DropFilter, [this] { dropFilter(); });
    for (std::size_t stars = 0; stars < kStarActions.size(); ++stars)
        on(kStarActions.at(stars), [this, stars] { setStars(static_cast<int>(stars)); });
}

void LibraryActions::connectFilters() {
    connect(m_filters, &FilterPane::asked, this,
            [this](const QString& query, const QString& sort) { m_search.ask(query, sort); });
    connect(m_filters, &FilterPane::droppedOnShelf, this, &LibraryActions::putOn);
    connect(m_filters, &FilterPane::droppedOnTag, this, &LibraryActions::addTag);
    connect(m_filters, &FilterPane::shelfMoved, this, [this](const QString& name, int place) {
        m_edits.apply({[shelf = name.toStdString(), place](catalogue::Library& library) {
                           return oneIf(catalogue::placeShelf(library, shelf, place));
                       },
                       sameWords(tr("Moved the shelf %1.").arg(shownText(name.toStdString())))});
    });
    connect(&m_search, &SearchBar::asked, this, [this] { m_filters->markQuery(m_search.text()); });
    connect(m_filters, &FilterPane::renameAsked, this, &LibraryActions::renameFilter);
    connect(m_filters, &FilterPane::dropAsked, this, &LibraryActions::dropFilter);
    m_filters->addAction(&m_actions[ActionId::RenameFilter]);
    m_filters->addAction(&m_actions[ActionId::DropFilter]);
    m_filters->addAction(&m_actions[ActionId::SaveSearch]);
    m_filters->setContextMenuPolicy(Qt::ActionsContextMenu);
}

void LibraryActions::renew() {
    m_reading.start([path = m_context.libraryPath](
                        const core::Progress& progress) { return readFilters(path, progress); },
                    [this](const Result<LibraryFilters>& filters) {
                        // A library that is busy for a moment is read again at its next change.
                        if (!filters) return;
                        m_shelves = filters->shelves;
                        m_filters->showFilters(*filters);
                        showSteps(*filters);
                        Q_EMIT filtersRead(*filters);
                    });
}

void LibraryActions::finishAll() {
    m_reading.stopAndWait();
    m_edits.finishAll();
}

void LibraryActions::editWords() {
    const Ids ids = m_chosen.ids();
    if (ids.empty()) return;
    const auto rows = catalogue::readRows(m_context.library, std::span(ids.data(), 1));
    if (!rows) {
        m_notices.showNotice({MarkKind::Caution, shownError(rows.error()), {}});
        return;
    }
    auto* const dialog =
        new WordsDialog(std::ssize(ids), ids.size() == 1 ? &rows->front() : nullptr,
                        m_context.theme, m_page->window());
    connect(dialog, &QDialog::accepted, this, [this, dialog, ids] {
        if (const auto change = dialog->change()) changeWords(ids, *change);
    });
    dialog->open();
}

void LibraryActions::changeWords(const Ids& ids, const WordsChange& change) {
    m_edits.apply(
        {[ids, change](catalogue::Library& library) { return applyWords(library, ids, change); },
         changedWords});
}

void LibraryActions::setStars(int stars) {
    WordsChange change;
    change.patch.stars = stars;
    changeWords(m_chosen.ids(), change);
}

void LibraryActions::addTag(const QString& tag, const Ids& ids) {
    WordsChange change;
    change.add.push_back(tag.toStdString());
    changeWords(ids, change);
}

void LibraryActions::remove() {
    m_edits.apply({[ids = m_chosen.ids()](catalogue::Library& library) {
                       return catalogue::removeTextures(library, ids);
                   },
                   [](std::int64_t changed) {
                       return counted("LibraryActions",
                                      "Removed %1 texture; it is still among the removed ones.",
                                      "Removed %1 textures; they are still among the removed ones.",
                                      changed);
                   }});
}

void LibraryActions::recover() {
    m_edits.apply({[ids = m_chosen.ids()](catalogue::Library& library) {
                       return catalogue::recoverTextures(library, ids);
                   },
                   [](std::int64_t changed) {
                       return counted("LibraryActions", "Brought %1 texture back.",
                                      "Brought %1 textures back.", changed);
                   }});
}

void LibraryActions::revert(TextureId id, int revision) {
    m_edits.apply({[id, revision](catalogue::Library& library) -> Result<std::int64_t> {
                       PANTILE_ASSIGN_OR_RETURN(const std::int64_t changed,
                                                catalogue::revertTexture(library, id, revision));
                       keepCost(library, id);
                       return changed;
                   },
                   [revision](std::int64_t changed) {
                       return changed == 0
                                  ? tr("It is what it was after revision %1.").arg(revision)
                                  : tr("Went back to revision %1.").arg(revision);
                   }});
}

// Which step it was is known only once it is done, as other programs change the library too.
void LibraryActions::undo() {
    turn(tasks::undoLast, tr("Undone: %1"));
}

void LibraryActions::redo() {
    turn(tasks::redoLast, tr("Done again: %1"));
}

void LibraryActions::turn(Turn one, const QString& words) {
    const auto what = std::make_shared<QString>();  // The job and the words own it.
    m_edits.apply({[what, one](catalogue::Library& library) -> Result<std::int64_t> {
                       PANTILE_ASSIGN_OR_RETURN(const catalogue::UndoneAction step, one(library));
                       for (const TextureId id : step.newPictures) keepCost(library, id);
                       *what = shownText(step.action.what);
                       return 1;
                   },
                   [what, words](std::int64_t) { return words.arg(*what); }});
}

void LibraryActions::showSteps(const LibraryFilters& filters) {
    const auto show = [this](ActionId id, const QString& word,
                             const std::optional<std::string>& what) {
        m_actions[id].setEnabled(what.has_value());
        // An ampersand would mark a key.
        const QString name =
            shownText(what.value_or("")).replace(QLatin1Char('&'), QStringLiteral("&&"));
        m_actions[id].setText(what ? QStringLiteral("%1: %2").arg(word, name) : word);
    };
    show(ActionId::UndoInLibrary, tr("&Undo"), filters.undo);
    show(ActionId::RedoInLibrary, tr("Re&do"), filters.redo);
}

std::vector<std::string> LibraryActions::shelfNames() const {
    std::vector<std::string> names;
    for (const catalogue::Shelf& shelf : m_shelves) names.push_back(shelf.name);
    return names;
}

void LibraryActions::putOn(const QString& shelf, const Ids& ids) {
    const QString shown = shownText(shelf.toStdString());
    m_edits.apply({[ids, name = shelf.toStdString()](catalogue::Library& library) {
                       return catalogue::putOnShelf(library, ids, name);
                   },
                   [shown](std::int64_t changed) {
                       return counted("LibraryActions", "Put %1 texture on the shelf %2.",
                                      "Put %1 textures on the shelf %2.", changed)
                           .arg(shown);
                   }});
}

void LibraryActions::putOnShelf() {
    QStringList names;
    for (const std::string& name : shelfNames()) names.append(QString::fromStdString(name));
    const QString name = m_context.prompts.askName(m_page->window(), tr("Put on a Shelf"),
                                                   tr("Shelf, or the name of a new one:"), names);
    if (!name.isEmpty()) putOn(name, m_chosen.ids());
}

void LibraryActions::takeFromShelf() {
    const auto filter = m_filters->current();
    std::string shelf;
    if (filter && filter->kind == FilterPane::Chosen::Kind::Shelf) shelf = filter->name;
    if (shelf.empty()) {
        QStringList names;
        for (const std::string& name : shelfNames()) names.append(QString::fromStdString(name));
        shelf = m_context.prompts
                    .askName(m_page->window(), tr("Take from a Shelf"), tr("Shelf:"), names)
                    .toStdString();
    }
    if (shelf.empty()) return;
    m_edits.apply({[ids = m_chosen.ids(), shelf](catalogue::Library& library) {
                       return catalogue::takeFromShelf(library, ids, shelf);
                   },
                   [shown = shownText(shelf)](std::int64_t changed) {
                       return counted("LibraryActions", "Took %1 texture from the shelf %2.",
                                      "Took %1 textures from the shelf %2.", changed)
                           .arg(shown);
                   }});
}

void LibraryActions::saveSearch() {
    const QString name = m_context.prompts.askName(m_page->window(), tr("Save the Search"),
                                                   tr("Name for what the search field says:"), {});
    if (name.isEmpty()) return;
    const catalogue::SavedSearch search{name.toStdString(), m_search.text().toStdString(),
                                        m_search.sortName()};
    m_edits.apply({[search](catalogue::Library& library) {
                       return oneIf(catalogue::saveSearch(library, search));
                   },
                   sameWords(tr("Saved the search %1.").arg(shownText(search.name)))});
}

void LibraryActions::renameFilter() {
    const auto filter = namedFilter();
    if (!filter) return;
    const QString shown = shownText(filter->name);
    const QString name = m_context.prompts.askName(m_page->window(), tr("Rename"),
                                                   tr("New name of %1:").arg(shown), {});
    if (name.isEmpty()) return;
    const auto rename = [kind = filter->kind, old = filter->name, name = name.toStdString()](
                            catalogue::Library& library) -> Result<std::int64_t> {
        if (kind == FilterPane::Chosen::Kind::Tag) return catalogue::renameTag(library, old, name);
        return oneIf(kind == FilterPane::Chosen::Kind::Shelf
                         ? catalogue::renameShelf(library, old, name)
                         : catalogue::renameSearch(library, old, name));
    };
    m_edits.apply(
        {rename, sameWords(tr("%1 is called %2 now.").arg(shown, shownText(name.toStdString())))});
}

// The textures stay where they are.
void LibraryActions::dropFilter() {
    const auto filter = namedFilter();
    if (!filter) return;
    using Kind = FilterPane::Chosen::Kind;
    const auto drop = [kind = filter->kind,
                       name = filter->name](catalogue::Library& library) -> Result<std::int64_t> {
        if (kind == Kind::Tag) return catalogue::deleteTag(library, name);
        return oneIf(kind == Kind::Shelf ? catalogue::deleteShelf(library, name)
                                         : catalogue::removeSearch(library, name));
    };
    const QString words = filter->kind == Kind::Tag
                              ? tr("Took the tag %1 off every texture; they stay in the library.")
                          : filter->kind == Kind::Shelf
                              ? tr("Removed the shelf %1; its textures stay in the library.")
                              : tr("Removed the saved search %1.");
    m_edits.apply({drop, sameWords(words.arg(shownText(filter->name)))});
}

std::optional<FilterPane::Chosen> LibraryActions::namedFilter() {
    if (m_filters->isNamed()) return m_filters->current();
    m_notices.showNotice(
        {MarkKind::Caution, tr("Choose a shelf, a tag or a saved search at the side first."), {}});
    return std::nullopt;
}

}  // namespace pantile::desktop
