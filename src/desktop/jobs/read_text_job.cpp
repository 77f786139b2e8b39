#include "desktop/jobs/read_text_job.h"

#include <algorithm>
#include <string>
#include <string_view>

#include <QCoreApplication>

#include "catalogue/reader.h"
#include "desktop/texts.h"
#include "tasks/library_place.h"
#include "tasks/share_codes.h"

namespace pantile::desktop {

using core::Result;

namespace {

QString inReadContext(const char* text) {
    return QCoreApplication::translate("reading", text);
}

// Places in a text, from bytes of its UTF-8 to units of its QString, asked for in rising order.
class UnitPlaces {
public:
    explicit UnitPlaces(std::string_view text) : m_text(text) {}

    int of(std::size_t byte) {
        m_units += static_cast<int>(fromUtf8(m_text.substr(m_byte, byte - m_byte)).size());
        m_byte = byte;
        return m_units;
    }

private:
    std::string_view m_text;
    std::size_t m_byte = 0;
    int m_units = 0;
};

QString textureWords(const codec::FoundCode& found, std::optional<core::TextureId> known) {
    const core::Texture& texture = found.texture;
    QStringList words = {
        shownTitle(texture.text().title), shownSize(texture.grid().size()),
        known ? inReadContext("here already, as %1").arg(known->value) : inReadContext("new")};
    if (found.repaired > 0) {
        words.append(counted("reading", "%1 slip put right", "%1 slips put right", found.repaired));
    }
    return words.join(QStringLiteral(" · "));
}

Result<void> takeFound(const catalogue::Library& library, const ReadTextRequest& request,
                       const codec::Harvest& harvest, std::string_view text,
                       ReadTextAnswer& answer) {
    UnitPlaces places(text);
    for (const codec::FoundCode& found : harvest.found) {
        const core::Texture& texture = found.texture;
        PANTILE_ASSIGN_OR_RETURN(
            const auto known, catalogue::findByContent(library, texture.grid(), texture.palette()));
        if (!known) ++answer.fresh;
        answer.items.push_back(
            {textureWords(found, known), places.of(found.textByte),
             cellPicture(texture, request.pictureSide, Repeat::Once, request.hatch)});
    }
    answer.read = static_cast<int>(harvest.found.size());
    return {};
}

void takeDamaged(const codec::Harvest& harvest, std::string_view text, ReadTextAnswer& answer) {
    UnitPlaces places(text);
    for (const codec::DamagedCode& damaged : harvest.damaged) {
        answer.items.push_back({inReadContext("Damaged: %1: %2")
                                    .arg(shownText(damaged.where), shownText(damaged.reason)),
                                places.of(damaged.textByte),
                                {}});
    }
    answer.damaged = static_cast<int>(harvest.damaged.size());
}

}  // namespace

Result<ReadTextAnswer> readText(const ReadTextRequest& request, const core::Progress& progress) {
    const std::string text = request.text.toStdString();
    PANTILE_ASSIGN_OR_RETURN(const catalogue::Library library,
                             tasks::openLibrary(request.libraryPath, tasks::Purpose::Look));
    const codec::Harvest harvest =
        codec::harvestCodes(text, tasks::paletteLookup(library), progress);
    if (progress.stopRequested()) return core::stoppedError();
    ReadTextAnswer answer;
    PANTILE_RETURN_IF_ERROR(takeFound(library, request, harvest, text, answer));
    takeDamaged(harvest, text, answer);
    std::stable_sort(answer.items.begin(), answer.items.end(),
                     [](const auto& a, const auto& b) { return a.place < b.place; });
    UnitPlaces places(text);
    for (const codec::MarkedText& mark : harvest.marks) {
        const int begin = places.of(mark.begin);
        answer.marks.push_back({begin, places.of(mark.end), mark.mark});
    }
    return answer;
}

}  // namespace pantile::desktop
