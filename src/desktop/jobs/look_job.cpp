#include "desktop/jobs/look_job.h"

#include <algorithm>
#include <fstream>

#include "catalogue/open_files.h"
#include "catalogue/shelves.h"
#include "catalogue/tags.h"
#include "image_files/read_image.h"
#include "tasks/bytes.h"
#include "tasks/collect_files.h"
#include "tasks/files.h"
#include "tasks/library_place.h"
#include "tasks/recognise.h"

namespace pantile::desktop {

using core::Result;

namespace {

// The settings are for all; to try them, some are enough.
constexpr std::size_t kMostPictures = 200;
// Whether to ask at all is decided by the first few.
constexpr std::size_t kMostMeasured = 12;

bool beginsAsPicture(const std::filesystem::path& path) {
    constexpr std::size_t kEnoughBytes = 1024;
    std::ifstream file(path, std::ios::binary);
    std::string begin(kEnoughBytes, '\0');
    file.read(begin.data(), static_cast<std::streamsize>(begin.size()));
    begin.resize(static_cast<std::size_t>(std::max<std::streamsize>(file.gcount(), 0)));
    return tasks::isPicture(begin);
}

std::vector<tasks::GatherInput> picturesIn(const std::vector<tasks::GatherInput>& inputs,
                                           const std::filesystem::path& libraryPath,
                                           const core::Progress& progress) {
    std::vector<tasks::GatherInput> pictures;
    for (const tasks::GatherInput& input : inputs) {
        if (input.bytes) {
            if (tasks::isPicture(*input.bytes)) pictures.push_back(input);
            continue;
        }
        const auto found = tasks::collectFiles(input.path);
        if (!found) continue;
        for (const tasks::FoundFile& file : found->files) {
            if (pictures.size() == kMostPictures || progress.stopRequested()) return pictures;
            if (catalogue::isPartOf(file.path, libraryPath)) continue;
            if (beginsAsPicture(file.path)) pictures.push_back({file.path.string(), std::nullopt});
        }
    }
    return pictures;
}

bool isToBeAskedFor(const tasks::GatherInput& input, AskFor asked) {
    const auto picture = input.bytes
                             ? image_files::readImageBytes(tasks::asBytes(*input.bytes), input.path)
                             : image_files::readImageFile(input.path);
    if (!picture) return false;
    const core::Size size = picture->pixels.size;
    return asked == AskFor::EveryPicture ||
           std::max(size.width, size.height) > tasks::kUsualGridSide;
}

}  // namespace

bool mayHoldPictures(const GatherRequest& request) {
    const auto mayHold = [](const tasks::GatherInput& input) {
        return !input.bytes || tasks::isPicture(*input.bytes);
    };
    return !request.picture.isNull() ||
           std::any_of(request.inputs.begin(), request.inputs.end(), mayHold);
}

Result<RequestLook> lookAt(const std::filesystem::path& libraryPath, GatherRequest request,
                           AskFor asked, const core::Progress& progress) {
    if (!request.picture.isNull()) {
        PANTILE_ASSIGN_OR_RETURN(tasks::GatherInput input, pictureInput(request.picture));
        request.inputs.push_back(std::move(input));
    }
    RequestLook look;
    look.pictures = picturesIn(request.inputs, libraryPath, progress);
    const auto measured = std::min(kMostMeasured, look.pictures.size());
    const bool any = std::any_of(
        look.pictures.begin(), look.pictures.begin() + static_cast<std::ptrdiff_t>(measured),
        [&](const auto& each) { return !progress.stopRequested() && isToBeAskedFor(each, asked); });
    if (progress.stopRequested()) return core::stoppedError();
    if (!any) {
        look.pictures.clear();
        return look;
    }
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(look.defaults, tasks::drawingDefaults(library));
    PANTILE_ASSIGN_OR_RETURN(const auto shelves, catalogue::listShelves(library));
    for (const catalogue::Shelf& shelf : shelves) look.shelves.push_back(shelf.name);
    PANTILE_ASSIGN_OR_RETURN(const auto tags, catalogue::listTags(library));
    for (const catalogue::TagCount& tag : tags) look.tags.push_back(tag.name);
    return look;
}

}  // namespace pantile::desktop
