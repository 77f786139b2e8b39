#pragma once

// ProfileWork: the library's canvases, boards and palettes, and what is done to them, each as one
// step that can be undone. Costs that no longer hold are worked out anew, whoever made the change.

#include <deque>
#include <optional>

#include <QObject>

#include "desktop/app_context.h"
#include "desktop/jobs/background_job.h"
#include "desktop/jobs/library_edits.h"
#include "desktop/jobs/profiles_job.h"

namespace pantile::desktop {

class NoticeBar;

/// A change that was not made.
struct RefusedProfile {
    core::Error error;
    ProfileKey key;
    std::optional<Profile> asked;  ///< What should have become of it; nothing for removing.
};

class ProfileWork : public QObject {
    Q_OBJECT

public:
    /// Both must outlive it.
    ProfileWork(AppContext& context, NoticeBar& notices, QObject* parent);

    /// As the library has them, with what was asked for meanwhile.
    const Profiles& profiles() const { return m_profiles; }

    void add(const Profile& profile);

    /// Another name included.
    void change(const ProfileKey& key, const Profile& profile);
    void remove(const ProfileKey& key);

    /// Plans the texture as if the library had `profile`, unless one is being planned: that cannot
    /// be ended in its middle. Says whether it does.
    bool tryOut(core::TextureId id, const Profile& profile);

    /// The library may be another by now.
    void renew();

    /// For closing: what was asked for is done, and nothing runs.
    void finishAll();

Q_SIGNALS:
    /// By one of the functions above, or because costs are known now.
    void libraryChanged();
    void profilesChanged();
    void done(const QString& words);

    void failed(const RefusedProfile& refused);
    void triedOut(const TrialCost& tried);

private:
    struct Asked {
        ProfileKey key;
        std::optional<Profile> profile;
    };

    void apply(Asked asked, LibraryEdit edit);
    void showRead(const core::Result<Profiles>& profiles);
    void startCosts();
    void showCosts(const core::Result<std::int64_t>& worked);

    AppContext& m_context;
    NoticeBar& m_notices;
    Profiles m_profiles;
    std::optional<Profiles> m_read;  ///< As they were when they were last read.
    std::deque<Asked> m_asked;       ///< In the order of the edits.
    LibraryEdits m_edits;
    BackgroundJob<Profiles> m_reading;
    BackgroundJob<std::int64_t> m_costing;
    BackgroundJob<TrialCost> m_trying;
};

}  // namespace pantile::desktop
