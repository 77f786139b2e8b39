#pragma once

// What a pasted text holds: its codes, what is damaged, and where each stands.

#include <filesystem>
#include <vector>

#include <QImage>
#include <QString>

#include "codec/harvest.h"
#include "core/progress.h"
#include "core/result.h"
#include "desktop/views/cell_picture.h"

namespace pantile::desktop {

struct ReadTextRequest {
    std::filesystem::path libraryPath;
    QString text;
    int pictureSide = 0;  ///< Pixels of the screen.
    Hatch hatch;
};

/// Something that the text holds. Places are places in the QString.
struct ReadItem {
    QString words;  ///< Fit to be shown.
    int place = 0;
    QImage picture;  ///< Null if it is damaged.

    bool isDamaged() const { return picture.isNull(); }
};

struct TextMark {
    int begin = 0;
    int end = 0;
    codec::CodeMark mark = codec::CodeMark::Read;

    bool operator==(const TextMark&) const = default;
};

struct ReadTextAnswer {
    std::vector<ReadItem> items;  ///< In the order of the text.
    std::vector<TextMark> marks;  ///< The same.
    int read = 0;
    int damaged = 0;
    int fresh = 0;  ///< Read, and not yet in the library.
};

/// Errors: those of the library; Cancelled.
core::Result<ReadTextAnswer> readText(const ReadTextRequest& request,
                                      const core::Progress& progress);

}  // namespace pantile::desktop
