#include "desktop/load_work.h"

#include <algorithm>

#include "catalogue/loads.h"
#include "desktop/texts.h"
#include "desktop/views/notice_bar.h"
#include "tasks/edit_load.h"

namespace pantile::desktop {

using core::Result;
using Ids = std::vector<core::TextureId>;

namespace {

LibraryEdit::Words putWords(const std::string& load) {
    return [shown = shownText(load)](std::int64_t put) {
        if (put == 0) return LoadWork::tr("Moved in the load %1.").arg(shown);
        return counted("LoadWork", "Put %1 texture in the load %2.",
                       "Put %1 textures in the load %2.", put)
            .arg(shown);
    };
}

}  // namespace

LoadWork::LoadWork(AppContext& context, NoticeBar& notices, QObject* parent)
    : QObject(parent),
      m_context(context),
      m_notices(notices),
      m_known(std::make_shared<tasks::KnownCosts>()),
      m_edits(context.libraryPath, context.jobs, this),
      m_reading(context.jobs),
      m_costing(context.jobs),
      m_choosing(context.jobs) {
    connect(&m_edits, &LibraryEdits::done, this, [this](const QString& words) {
        m_notices.showNotice({MarkKind::Done, words, {}});
        renew();
        Q_EMIT libraryChanged();
    });
    connect(&m_edits, &LibraryEdits::failed, this, &LoadWork::tellError);
    connect(&m_notices, &NoticeBar::stopAsked, this, &LoadWork::stopChoosing);
    renew();
}

void LoadWork::show(const std::string& load) {
    m_wanted = load;
    renew();
}

void LoadWork::renew() {
    const TrayRequest request{m_context.libraryPath, m_wanted, m_nextBoard};
    m_reading.start([request](const core::Progress&) { return readTray(request); },
                    [this](const Result<TrayContents>& contents) { showContents(contents); });
}

void LoadWork::showContents(const Result<TrayContents>& contents) {
    if (!contents) return tellError(contents.error());
    m_contents = *contents;
    m_wanted = m_contents.load;
    m_tray.setLoad(m_contents.load, m_contents.board, m_contents.slots);
    Q_EMIT contentsChanged();
    m_costing.start(
        [path = m_context.libraryPath, shown = m_contents,
         known = m_known](const core::Progress& progress) {
            return readTrayCosts(path, shown, *known, progress);
        },
        [this](Result<tasks::LoadCosts> costs) {
            if (!costs) return tellError(costs.error());
            m_tray.setCosts(*std::move(costs));
            Q_EMIT costsChanged();
        });
}

void LoadWork::put(const Ids& ids, const std::string& from, int place) {
    const std::string& load = m_contents.load;
    const auto at = static_cast<std::size_t>(std::max(place, 0));
    if (load.empty()) {
        m_edits.apply({[ids, board = m_contents.board.name](
                           catalogue::Library& library) -> Result<std::int64_t> {
                           PANTILE_RETURN_IF_ERROR(tasks::newLoads(library, board, {ids}));
                           return std::ssize(ids);
                       },
                       [](std::int64_t put) {
                           return counted("LoadWork", "Made a load of %1 texture.",
                                          "Made a load of %1 textures.", put);
                       }});
    } else if (from.empty() || from == load) {
        m_edits.apply({[ids, load, at](catalogue::Library& library) {
                           return tasks::putInLoad(library, load, ids, at);
                       },
                       putWords(load)});
    } else {
        m_edits.apply({[ids, from, load, at](catalogue::Library& library) {
                           return tasks::carryToLoad(library, from, ids, load, at);
                       },
                       putWords(load)});
    }
}

void LoadWork::putInLoad(const std::string& load, const Ids& ids, const std::string& from) {
    constexpr std::size_t kAtTheEnd = core::kMaxBoardSlots;
    m_edits.apply({[ids, from, load](catalogue::Library& library) {
                       return from.empty() || from == load
                                  ? tasks::putInLoad(library, load, ids, kAtTheEnd)
                                  : tasks::carryToLoad(library, from, ids, load, kAtTheEnd);
                   },
                   putWords(load)});
}

void LoadWork::takeOut(const Ids& ids, const std::string& from) {
    m_edits.apply({[ids, from](catalogue::Library& library) {
                       return tasks::takeFromLoad(library, from, ids);
                   },
                   [shown = shownText(from)](std::int64_t taken) {
                       return counted("LoadWork", "Took %1 texture out of the load %2.",
                                      "Took %1 textures out of the load %2.", taken)
                           .arg(shown);
                   }});
}

void LoadWork::makeLoad() {
    const auto name = std::make_shared<std::string>();  // The job and the words own it.
    m_edits.apply({[name, board = m_contents.board.name](
                       catalogue::Library& library) -> Result<std::int64_t> {
                       PANTILE_ASSIGN_OR_RETURN(const auto names,
                                                tasks::newLoads(library, board, {{}}));
                       *name = names.front();
                       return 1;
                   },
                   [this, name](std::int64_t) {
                       m_wanted = *name;
                       return tr("Made the load %1.").arg(shownText(*name));
                   }});
}

void LoadWork::rename(const std::string& newName) {
    m_edits.apply({[load = m_contents.load, newName](catalogue::Library& library) {
                       return oneIf(catalogue::renameLoad(library, load, newName));
                   },
                   [this, newName](std::int64_t) {
                       m_wanted = newName;
                       return tr("The load is called %1 now.").arg(shownText(newName));
                   }});
}

void LoadWork::remove() {
    m_edits.apply({[load = m_contents.load](catalogue::Library& library) {
                       return oneIf(catalogue::removeLoad(library, load));
                   },
                   sameWords(tr("Removed the load %1; its textures stay in the library.")
                                 .arg(shownText(m_contents.load)))});
}

void LoadWork::setBoard(const std::string& board) {
    m_nextBoard = board;
    if (m_contents.load.empty()) return renew();
    m_edits.apply({[load = m_contents.load, board](catalogue::Library& library) {
                       return oneIf(catalogue::setLoadBoard(library, load, board));
                   },
                   sameWords(tr("The load %1 is for the board %2 now.")
                                 .arg(shownText(m_contents.load), shownText(board)))});
}

void LoadWork::setTimeLimit(std::optional<std::int64_t> limit) {
    m_timeLimit = limit;
    Q_EMIT costsChanged();
}

void LoadWork::choose(ChooseRequest request) {
    request.libraryPath = m_context.libraryPath;
    request.load = m_contents.load;
    request.board = m_contents.board.name;
    request.canvas = m_contents.canvas;
    request.milliseconds = m_timeLimit;
    m_notices.showProgress(0, 0, tr("Choosing"));
    m_choosing.start(
        [request](const core::Progress& progress) { return chooseFor(request, progress); },
        [this, request](const Result<ChooseAnswer>& answer) { showChosen(request, answer); },
        [this](int done, int total, const QString&) {
            m_notices.showProgress(done, total, tr("Planning %1 of %2").arg(done).arg(total));
        });
}

void LoadWork::stopChoosing() {
    m_choosing.stop();
}

void LoadWork::showChosen(const ChooseRequest& request, const Result<ChooseAnswer>& answer) {
    if (!answer) return tellError(answer.error());
    if (request.overSeveral) {
        keepSeveral(*answer);
    } else {
        keepOne(request, *answer);
    }
    Q_EMIT chosen(*answer);
}

void LoadWork::keepOne(const ChooseRequest& request, const ChooseAnswer& answer) {
    const Ids& ids = answer.loads.front();
    if (ids.empty()) return m_notices.showNotice({MarkKind::Caution, answer.words, {}});
    if (request.load.empty()) return put(ids, {}, 0);
    m_edits.apply({[ids, load = request.load](catalogue::Library& library) {
                       return oneIf(tasks::fillLoad(library, load, ids));
                   },
                   sameWords(answer.words)});
}

void LoadWork::keepSeveral(const ChooseAnswer& answer) {
    const auto first = std::make_shared<std::string>();  // The job and the words own it.
    m_edits.apply(
        {[first, loads = answer.loads, board = m_contents.board.name,
          canvas = m_contents.canvas](catalogue::Library& library) -> Result<std::int64_t> {
             PANTILE_ASSIGN_OR_RETURN(const auto names,
                                      tasks::newLoads(library, board, loads, canvas));
             *first = names.front();
             return 1;
         },
         [this, first, words = answer.words](std::int64_t) {
             m_wanted = *first;
             return words;
         }});
}

void LoadWork::tellError(const core::Error& error) {
    m_notices.showNotice({MarkKind::Caution, shownError(error), {}});
}

void LoadWork::finishAll() {
    m_choosing.stopAndWait();
    m_edits.finishAll();
    m_reading.stopAndWait();
    m_costing.stopAndWait();
}

}  // namespace pantile::desktop
