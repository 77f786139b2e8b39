#pragma once

// LoadWork: the load in the tray and everything that is done to loads, each as one step that can be
// undone. The tray and the place called Boards show it.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <QObject>

#include "core/ids.h"
#include "desktop/app_context.h"
#include "desktop/jobs/background_job.h"
#include "desktop/jobs/choose_job.h"
#include "desktop/jobs/library_edits.h"
#include "desktop/jobs/tray_job.h"
#include "desktop/models/tray_model.h"

namespace pantile::desktop {

class NoticeBar;

class LoadWork : public QObject {
    Q_OBJECT

public:
    /// Both must outlive it.
    LoadWork(AppContext& context, NoticeBar& notices, QObject* parent);

    TrayModel& tray() { return m_tray; }

    const TrayModel& tray() const { return m_tray; }

    /// Of the library, sorted by name.
    const std::vector<catalogue::StoredLoad>& loads() const { return m_contents.loads; }

    /// Of all of the load that is shown; empty for each texture's own.
    const std::string& canvas() const { return m_contents.canvas; }

    const std::vector<core::Board>& boards() const { return m_contents.boards; }

    /// Puts another load in the tray.
    void show(const std::string& load);

    /// In the tray's load from that slot on (from 0), or in a new one if there is none. `from` is
    /// the load that they are taken out of, or empty.
    void put(const std::vector<core::TextureId>& ids, const std::string& from, int place);

    /// The same at the end of another load.
    void putInLoad(const std::string& load, const std::vector<core::TextureId>& ids,
                   const std::string& from);
    void takeOut(const std::vector<core::TextureId>& ids, const std::string& from);
    void makeLoad();
    void rename(const std::string& newName);
    void remove();

    /// For which board the tray's load is, or the next one if there is none.
    void setBoard(const std::string& board);

    /// Units: milliseconds; nothing for no limit.
    void setTimeLimit(std::optional<std::int64_t> limit);

    std::optional<std::int64_t> timeLimit() const { return m_timeLimit; }

    /// Picks the best of these for the tray's load, or all over several loads.
    void choose(ChooseRequest request);

    /// Asks the choosing to stop.
    void stopChoosing();

    /// The library may be another by now.
    void renew();

    /// For closing: what was asked for is done, and nothing runs.
    void finishAll();

Q_SIGNALS:
    /// By one of the functions above.
    void libraryChanged();

    /// Another load is shown, or there are others.
    void contentsChanged();
    void costsChanged();
    void chosen(const ChooseAnswer& answer);

private:
    void showContents(const core::Result<TrayContents>& contents);
    void showChosen(const ChooseRequest& request, const core::Result<ChooseAnswer>& answer);
    void keepOne(const ChooseRequest& request, const ChooseAnswer& answer);
    void keepSeveral(const ChooseAnswer& answer);
    void tellError(const core::Error& error);

    AppContext& m_context;
    NoticeBar& m_notices;
    TrayModel m_tray;
    TrayContents m_contents;
    std::string m_wanted;     ///< The load to show once it is there.
    std::string m_nextBoard;  ///< For the first load.
    std::optional<std::int64_t> m_timeLimit;
    std::shared_ptr<tasks::KnownCosts> m_known;  ///< The jobs hold it too.
    LibraryEdits m_edits;
    BackgroundJob<TrayContents> m_reading;
    BackgroundJob<tasks::LoadCosts> m_costing;
    BackgroundJob<ChooseAnswer> m_choosing;
};

}  // namespace pantile::desktop
