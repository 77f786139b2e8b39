#include "desktop/profile_work.h"

#include <algorithm>

#include "desktop/texts.h"
#include "desktop/views/notice_bar.h"

namespace pantile::desktop {

using core::Result;

namespace {

LibraryEdit::Words wordsFor(const QString& words, const ProfileKey& key) {
    return sameWords(words.arg(shownText(key.name)));
}

// Palettes decide no cost.
bool decideTheSame(const Profiles& one, const Profiles& other) {
    return one.canvases() == other.canvases() && one.boards() == other.boards();
}

}  // namespace

ProfileWork::ProfileWork(AppContext& context, NoticeBar& notices, QObject* parent)
    : QObject(parent),
      m_context(context),
      m_notices(notices),
      m_edits(context.libraryPath, context.jobs, this),
      m_reading(context.jobs),
      m_costing(context.jobs),
      m_trying(context.jobs) {
    connect(&m_edits, &LibraryEdits::done, this, [this](const QString& words) {
        m_asked.pop_front();
        m_notices.showNotice({MarkKind::Done, words, {}});
        Q_EMIT done(words);
        renew();
        Q_EMIT libraryChanged();
    });
    connect(&m_edits, &LibraryEdits::failed, this, [this](const core::Error& error) {
        const Asked asked = std::move(m_asked.front());
        m_asked.pop_front();
        m_notices.showNotice({MarkKind::Caution, shownError(error), {}});
        renew();
        Q_EMIT failed({error, asked.key, asked.profile});
    });
    connect(&m_notices, &NoticeBar::stopAsked, this, [this] { m_costing.stop(); });
    renew();
}

void ProfileWork::apply(Asked asked, LibraryEdit edit) {
    m_asked.push_back(std::move(asked));
    m_edits.apply(std::move(edit));
    Q_EMIT profilesChanged();
}

void ProfileWork::add(const Profile& profile) {
    const ProfileKey key = keyOf(profile);
    m_profiles.all.push_back(profile);
    apply({key, profile},
          {[profile](catalogue::Library& library) { return oneIf(addProfile(library, profile)); },
           wordsFor(tr("Added %1."), key)});
}

void ProfileWork::change(const ProfileKey& key, const Profile& profile) {
    for (Profile& each : m_profiles.all) {
        if (keyOf(each) == key) each = profile;
    }
    apply({key, profile}, {[key, profile](catalogue::Library& library) {
                               return oneIf(changeProfile(library, key.name, profile));
                           },
                           wordsFor(tr("Changed %1."), keyOf(profile))});
}

void ProfileWork::remove(const ProfileKey& key) {
    std::erase_if(m_profiles.all, [&](const Profile& each) { return keyOf(each) == key; });
    apply({key, std::nullopt},
          {[key](catalogue::Library& library) { return oneIf(removeProfile(library, key)); },
           wordsFor(tr("Removed %1; undo brings it back."), key)});
}

bool ProfileWork::tryOut(core::TextureId id, const Profile& profile) {
    if (m_trying.isRunning()) return false;
    m_trying.start([request = TrialRequest{m_context.libraryPath, id, profile}](
                       const core::Progress&) { return desktop::tryOut(request); },
                   [this](const Result<TrialCost>& tried) {
                       if (tried) Q_EMIT triedOut(*tried);
                   });
    return true;
}

void ProfileWork::renew() {
    // What is asked for still will be read after it.
    if (m_edits.isRunning()) return;
    m_reading.start(
        [path = m_context.libraryPath](const core::Progress&) { return readProfiles(path); },
        [this](const Result<Profiles>& profiles) { showRead(profiles); });
}

void ProfileWork::showRead(const Result<Profiles>& profiles) {
    // A library that is busy for a moment is read again at its next change.
    if (!profiles || m_edits.isRunning()) return;
    const bool isFirst = !m_read;
    const bool costsHold = isFirst || decideTheSame(*m_read, *profiles);
    m_read = *profiles;
    const bool isSame = m_profiles == *profiles;
    m_profiles = *profiles;
    if (!costsHold) startCosts();
    if (isFirst || !isSame) Q_EMIT profilesChanged();
}

void ProfileWork::startCosts() {
    m_costing.start(
        [path = m_context.libraryPath](const core::Progress& progress) {
            return workOutCosts(path, progress);
        },
        [this](const Result<std::int64_t>& worked) { showCosts(worked); },
        [this](int done, int total, const QString&) {
            m_notices.showProgress(done, total,
                                   tr("Working out drawing times: %1 of %2").arg(done).arg(total));
        });
}

void ProfileWork::showCosts(const Result<std::int64_t>& worked) {
    if (!worked) {
        const bool isStopped = worked.error().kind == core::ErrorKind::Cancelled;
        m_notices.showNotice({MarkKind::Caution,
                              isStopped ? tr("Ended. Drawing times that are not known yet are "
                                             "worked out when they are asked for.")
                                        : shownError(worked.error()),
                              {}});
    } else if (*worked > 0) {
        m_notices.showNotice(
            {MarkKind::Done,
             counted("ProfileWork", "Worked out the drawing time of %1 texture anew.",
                     "Worked out the drawing times of %1 textures anew.", *worked),
             {}});
    }
    Q_EMIT libraryChanged();
}

void ProfileWork::finishAll() {
    m_edits.finishAll();
    m_reading.stopAndWait();
    m_costing.stopAndWait();
    m_trying.stopAndWait();
}

}  // namespace pantile::desktop
