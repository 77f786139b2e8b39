#pragma once

// AppContext: what the window's parts share. Made in main, passed by reference.

#include <algorithm>
#include <filesystem>

#include <QThread>
#include <QThreadPool>

#include "catalogue/library.h"
#include "desktop/theme/theme.h"
#include "desktop/user_prompts.h"

namespace pantile::desktop {

struct AppContext {
    std::filesystem::path libraryPath;
    catalogue::Library library;  ///< The window's own connection; jobs open theirs.
    UserPrompts& prompts;
    Theme theme;
    QThreadPool jobs;

    AppContext(catalogue::Library opened, UserPrompts& asking, const Theme& colours)
        : libraryPath(opened.path()), library(std::move(opened)), prompts(asking), theme(colours) {
        // A search must not wait for an adding that takes long, however few cores there are.
        constexpr int kLeastThreads = 4;
        jobs.setMaxThreadCount(std::max(kLeastThreads, QThread::idealThreadCount()));
    }
};

}  // namespace pantile::desktop
