#include "keeping/answers.h"

#include <array>
#include <sstream>
#include <string_view>

#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "catalogue/history.h"
#include "catalogue/loads.h"
#include "catalogue/palettes.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/searches.h"
#include "catalogue/shelves.h"
#include "catalogue/tags.h"

namespace pantile::tests {
namespace {

using catalogue::Library;

/// Values with a separator behind each.
class Text {
public:
    template <typename T>
    Text& operator<<(const T& value) {
        m_out << value << '|';
        return *this;
    }

    Text& operator<<(const std::vector<std::string>& list) {
        for (const std::string& one : list) *this << one;
        return *this << "";
    }

    template <typename T>
    Text& operator<<(const std::optional<T>& value) {
        if (!value) return *this << "none";
        return *this << *value;
    }

    Text& operator<<(const core::Point& point) { return *this << point.x << point.y; }

    Text& operator<<(const core::Palette& palette) {
        for (const core::Rgb8 colour : palette.colours()) *this << core::toHex(colour);
        return *this << (palette.transparent() ? int{*palette.transparent()} : -1);
    }

    std::string str() const { return m_out.str(); }

private:
    std::ostringstream m_out;
};

void put(Text& text, const catalogue::TextureRow& row) {
    text << row.id.value << row.title << row.author << row.licence << row.source << row.note
         << row.size.width << row.size.height << row.colours << row.stars << row.tags << row.shelves
         << row.addedAt << row.changedAt << row.removed << row.revision;
    if (row.estimate) {
        text << row.estimate->drawMs << row.estimate->loadBytes << row.estimate->profileKey;
    }
}

void put(Text& text, const catalogue::TextureRecord& record) {
    put(text, record.row);
    text << record.texture.palette();
    for (int y = 0; y < record.texture.grid().height(); ++y) {
        for (int x = 0; x < record.texture.grid().width(); ++x) {
            text << int{record.texture.grid().at(x, y)};
        }
    }
}

void put(Text& text, const catalogue::Revision& revision) {
    const catalogue::RevisionBefore& before = revision.before;
    text << revision.number << revision.at << catalogue::revisionKindName(revision.kind)
         << before.title << before.author << before.licence << before.source << before.note
         << before.stars << before.removed << before.contentId;
    if (before.tags) text << *before.tags;
}

void put(Text& text, const catalogue::FoundTextures& found) {
    text << found.total;
    for (const auto& row : found.rows) put(text, row);
}

void put(Text& text, const core::Board& board) {
    const core::PointerTiming& timing = board.timing;
    text << board.name << board.description << static_cast<int>(board.memory) << board.slots
         << board.bytes << board.display.width << board.display.height << timing.reportIntervalMs
         << timing.maxStepUp << timing.maxStepDown << timing.pressMs << timing.releaseMs
         << timing.settleMs;
}

void put(Text& text, const core::Canvas& canvas) {
    const core::CanvasGeometry& geometry = canvas.geometry;
    text << canvas.name << canvas.size.width << canvas.size.height << canvas.freeColours
         << static_cast<int>(canvas.penModel) << canvas.rules.turns << canvas.rules.covers
         << static_cast<int>(canvas.rules.leaving) << geometry.gridCentre << geometry.cellPitch
         << geometry.swatchCentre << geometry.swatchPitch << geometry.swatchesPerColumn
         << geometry.fillButton << canvas.palette;
}

void put(Text& text, const catalogue::StoredLoad& load) {
    text << load.name << load.board << load.madeAt;
    for (const auto slot : load.slots) text << slot.value;
    for (const auto& writing : load.writings) text << writing.at << writing.place << writing.board;
}

void put(Text& text, const catalogue::NamedPalette& palette) {
    text << palette.name << palette.palette;
}

void put(Text& text, const catalogue::SavedSearch& search) {
    text << search.name << search.query << search.sort;
}

void put(Text& text, const catalogue::Shelf& shelf) {
    text << shelf.name << shelf.count;
}

void put(Text& text, const catalogue::TagCount& tag) {
    text << tag.name << tag.textures;
}

void put(Text& text, const catalogue::TagAlias& alias) {
    text << alias.alias << alias.tag;
}

void put(Text& text, core::TextureId id) {
    text << id.value;
}

template <typename T>
void put(Text& text, const std::vector<T>& list) {
    for (const T& one : list) put(text, one);
}

template <typename T>
Answer answer(std::string question, const core::Result<T>& result) {
    if (!result) return {std::move(question), std::nullopt};
    Text text;
    put(text, *result);
    return {std::move(question), text.str()};
}

constexpr std::array<std::string_view, 14> kQueries = {"all",           "is:removed",
                                                       "kelp",          "ebel",
                                                       "tag:stone",     "tag:shore -rope",
                                                       "stars>=2",      "width<=9 colours>2",
                                                       "on:evening",    "colour:#aabbcc~60",
                                                       "added>2025-01", "shelf:\"pier 1\"",
                                                       "is:seamless",   "title:brass | note:tide"};

}  // namespace

std::vector<Answer> answersOf(const Library& library, std::int64_t lastId) {
    std::vector<Answer> answers;
    for (std::int64_t id = 1; id <= lastId; ++id) {
        const std::string name = "texture " + std::to_string(id);
        answers.push_back(answer(name, catalogue::readTexture(library, {id})));
        answers.push_back(answer("history of " + name, catalogue::history(library, {id})));
    }
    for (const std::string_view query : kQueries) {
        const auto parsed = catalogue::parseQuery(query);
        catalogue::FindOptions options;
        for (const auto field : {catalogue::SortField::Id, catalogue::SortField::Title}) {
            options.sort.field = field;
            answers.push_back(answer("find " + std::string(query),
                                     catalogue::findTextures(library, parsed.value(), options)));
        }
    }
    answers.push_back(answer("boards", catalogue::listBoards(library)));
    answers.push_back(answer("canvases", catalogue::listCanvases(library)));
    answers.push_back(answer("loads", catalogue::listLoads(library)));
    answers.push_back(answer("palettes", catalogue::listPalettes(library)));
    answers.push_back(answer("searches", catalogue::listSearches(library)));
    answers.push_back(answer("shelves", catalogue::listShelves(library)));
    answers.push_back(answer("tags", catalogue::listTags(library)));
    answers.push_back(answer("suggestions", catalogue::suggestTags(library, "s", 9)));
    answers.push_back(answer("aliases", catalogue::listTagAliases(library)));
    for (int shelf = 1; shelf <= 4; ++shelf) {
        const std::string name = "pier " + std::to_string(shelf);
        answers.push_back(answer("shelf " + name, catalogue::texturesOnShelf(library, name)));
    }
    return answers;
}

}  // namespace pantile::tests
