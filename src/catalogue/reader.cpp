#include "catalogue/reader.h"

#include <bit>
#include <limits>

#include "catalogue/contents.h"
#include "catalogue/fact_index.h"
#include "catalogue/id_list.h"
#include "catalogue/id_set.h"
#include "catalogue/index_changes.h"
#include "catalogue/match_list.h"
#include "catalogue/query_matcher.h"
#include "catalogue/sql_functions.h"
#include "catalogue/sqlite_error.h"
#include "catalogue/statement.h"
#include "catalogue/tag_list.h"
#include "core/range_check.h"

namespace pantile::catalogue {
namespace {

using core::Result;
using core::TextureId;

/// Keeps its statements, for lists of rows.
class RowReader {
public:
    static Result<RowReader> create(Connection& connection) {
        PANTILE_ASSIGN_OR_RETURN(
            Statement row,
            Statement::prepare(connection,
                               "SELECT t.title, t.author, t.licence, t.source, t.note, c.width, "
                               "c.height, c.colours, t.added_at, t.changed_at, t.removed_at, "
                               "t.revision, t.stars, e.draw_ms, e.load_bytes, e.profile_key "
                               "FROM textures t JOIN contents c ON c.id = t.content_id LEFT JOIN "
                               "estimates e ON e.texture_id = t.id WHERE t.id = ?1"));
        PANTILE_ASSIGN_OR_RETURN(
            Statement tags,
            Statement::prepare(connection,
                               "SELECT name FROM texture_tags JOIN tags ON tags.id = tag_id "
                               "WHERE texture_id = ?1 ORDER BY name"));
        PANTILE_ASSIGN_OR_RETURN(
            Statement shelves,
            Statement::prepare(connection,
                               "SELECT name FROM shelf_textures JOIN shelves ON shelves.id = "
                               "shelf_id WHERE texture_id = ?1 ORDER BY shelves.position, name"));
        return RowReader(std::move(row), std::move(tags), std::move(shelves));
    }

    Result<TextureRow> read(TextureId id) {
        PANTILE_RETURN_IF_ERROR(m_row.bind({id.value}));
        PANTILE_ASSIGN_OR_RETURN(const bool found, m_row.step());
        if (!found) return noSuchTexture(id);
        TextureRow row = fields(id);
        PANTILE_RETURN_IF_ERROR(m_row.columnCheck());
        PANTILE_ASSIGN_OR_RETURN(row.tags, names(m_tags, id));
        PANTILE_ASSIGN_OR_RETURN(row.shelves, names(m_shelves, id));
        return row;
    }

private:
    RowReader(Statement row, Statement tags, Statement shelves)
        : m_row(std::move(row)), m_tags(std::move(tags)), m_shelves(std::move(shelves)) {}

    TextureRow fields(TextureId id) {
        TextureRow row;
        row.id = id;
        row.title = m_row.text(0);
        row.author = m_row.text(1);
        row.licence = m_row.text(2);
        row.source = m_row.text(3);
        row.note = m_row.text(4);
        row.size = {m_row.smallInteger(5), m_row.smallInteger(6)};
        row.colours = m_row.smallInteger(7);
        row.addedAt = m_row.integer(8);
        row.changedAt = m_row.integer(9);
        row.removed = !m_row.isNull(10);
        row.revision = m_row.smallInteger(11);
        row.stars = m_row.smallInteger(12);
        if (!m_row.isNull(13)) {
            row.estimate = Estimate{m_row.integer(13), m_row.integer(14), m_row.text(15)};
        }
        return row;
    }

    static Result<std::vector<std::string>> names(Statement& statement, TextureId id) {
        PANTILE_RETURN_IF_ERROR(statement.bind({id.value}));
        std::vector<std::string> list;
        for (;;) {
            PANTILE_ASSIGN_OR_RETURN(const bool more, statement.step());
            if (!more) return list;
            list.push_back(statement.text(0));
        }
    }

    Statement m_row;
    Statement m_tags;
    Statement m_shelves;
};

Result<std::vector<TextureRow>> rowsOf(Connection& connection, std::span<const TextureId> ids) {
    PANTILE_ASSIGN_OR_RETURN(RowReader reader, RowReader::create(connection));
    std::vector<TextureRow> rows;
    for (const TextureId id : ids) {
        PANTILE_ASSIGN_OR_RETURN(TextureRow row, reader.read(id));
        rows.push_back(std::move(row));
    }
    return rows;
}

/// The fact that orders by a field, if one does; sizes are areas, which are worked out.
std::optional<Fact> orderingFact(SortField field) {
    switch (field) {
        case SortField::Added:
            return Fact::AddedAt;
        case SortField::Changed:
            return Fact::ChangedAt;
        case SortField::Stars:
            return Fact::Stars;
        case SortField::Draw:
            return Fact::DrawMs;
        case SortField::Bytes:
            return Fact::LoadBytes;
        case SortField::Colours:
            return Fact::Colours;
        case SortField::Colour:
            return Fact::Tone;
        case SortField::Size:
        case SortField::Title:
        case SortField::Relevance:
        case SortField::Id:
            break;
    }
    return std::nullopt;
}

/// Adds each of the textures, with what `keyOf` gives for the reader and the place.
template <typename KeyOf>
Result<void> addWithKeys(FactReader reader, const IdSet& ids, MatchList& matching, KeyOf keyOf) {
    constexpr std::size_t kRun = 64;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, reader.next());
        if (!more) return {};
        for (std::size_t begin = 0; begin < kTexturesPerFactPage; begin += kRun) {
            const std::int64_t first = reader.firstId() + static_cast<std::int64_t>(begin);
            for (std::uint64_t bits = ids.run(first); bits != 0; bits &= bits - 1) {
                const auto place = static_cast<std::size_t>(std::countr_zero(bits));
                matching.add({keyOf(reader, begin + place), first + std::countr_zero(bits)});
            }
        }
    }
}

Result<void> addBySize(Connection& connection, const IdSet& ids, MatchList& matching) {
    PANTILE_ASSIGN_OR_RETURN(FactReader reader,
                             FactReader::create(connection, {Fact::Width, Fact::Height}));
    return addWithKeys(std::move(reader), ids, matching,
                       [](const FactReader& page, std::size_t place) {
                           return page.values(0)[place] * page.values(1)[place];
                       });
}

/// What is not known comes last, whichever way the order goes.
Result<void> addByFact(Connection& connection, const IdSet& ids, Fact fact, SortDirection direction,
                       MatchList& matching) {
    constexpr std::int64_t kLast = std::numeric_limits<std::int64_t>::max();
    const std::int64_t unknown = direction == SortDirection::Reversed ? kUnknownFact : kLast;
    PANTILE_ASSIGN_OR_RETURN(FactReader reader, FactReader::create(connection, {fact}));
    return addWithKeys(std::move(reader), ids, matching,
                       [unknown](const FactReader& page, std::size_t place) {
                           const std::int64_t number = page.values(0)[place];
                           return number == kUnknownFact ? unknown : number;
                       });
}

/// Words in titles come first.
Result<void> addByRelevance(const Query& query, QueryMatcher& matcher, const IdSet& ids,
                            MatchList& matching) {
    constexpr std::size_t kTitle = 0;
    std::vector<const IdSet*> titled;
    for (const std::string& word : wordsOf(query)) {
        const std::string folded = matcher.fold(word);
        if (folded.empty()) continue;
        PANTILE_ASSIGN_OR_RETURN(const WordSets* sets, matcher.wordSets(folded));
        titled.push_back(&(*sets)[kTitle]);
    }
    ids.forEach([&](std::int64_t id) {
        std::int64_t words = 0;
        for (const IdSet* set : titled) words += set->has(id) ? 1 : 0;
        matching.add({words, id});
    });
    return {};
}

std::string jsonList(const IdSet& ids) {
    std::string list = "[";
    ids.forEach([&](std::int64_t id) {
        if (list.size() > 1) list += ',';
        list += std::to_string(id);
    });
    return list + "]";
}

/// Few are looked up; of many it is quicker to go along the order and ask whether each is one.
Result<std::vector<TextureId>> byTitle(Connection& connection, const FindOptions& options,
                                       IdSet& ids) {
    constexpr std::int64_t kOneIn = 8;
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t last,
                             connection.number("SELECT ifnull((SELECT max(id) FROM textures), 0)"));
    const bool areFew = ids.size() < last / kOneIn;
    const std::string list = areFew ? jsonList(ids) : "";
    const std::string condition =
        areFew ? "id IN (SELECT value FROM json_each(?1))" : "is_one_of(?1, id)";
    const std::string direction = options.sort.direction == SortDirection::Reversed ? " DESC" : "";
    PANTILE_ASSIGN_OR_RETURN(
        Statement statement,
        Statement::prepare(
            connection,
            "SELECT id FROM textures WHERE " + condition + " ORDER BY title COLLATE NOCASE" +
                direction + ", id" + direction + " LIMIT ?2 OFFSET ?3",
            {areFew ? BoundValue(list) : bound(ids), options.limit, options.offset}));
    std::vector<TextureId> page;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, statement.step());
        if (!more) return page;
        page.push_back({statement.integer(0)});
    }
}

/// Whether the most comes first where the order is not reversed.
bool isFalling(SortField order) {
    return order == SortField::Relevance || order == SortField::Added ||
           order == SortField::Changed || order == SortField::Stars;
}

Result<std::vector<TextureId>> inOrder(Connection& connection, const Query& query,
                                       QueryMatcher& matcher, const FindOptions& options,
                                       IdSet& ids) {
    const SortField field = options.sort.field;
    if (field == SortField::Title) return byTitle(connection, options, ids);
    const bool isReversed = options.sort.direction == SortDirection::Reversed;
    const auto direction =
        isReversed == isFalling(field) ? SortDirection::Usual : SortDirection::Reversed;
    MatchList matching(direction, options.offset, options.limit);
    const std::optional<Fact> fact = orderingFact(field);
    if (fact) {
        PANTILE_RETURN_IF_ERROR(
            addByFact(connection, ids, *fact, options.sort.direction, matching));
    } else if (field == SortField::Size) {
        PANTILE_RETURN_IF_ERROR(addBySize(connection, ids, matching));
    } else if (field == SortField::Relevance) {
        PANTILE_RETURN_IF_ERROR(addByRelevance(query, matcher, ids, matching));
    } else {
        ids.forEach([&](std::int64_t id) { matching.add({0, id}); });
    }
    return matching.page();
}

struct FoundIds {
    std::vector<TextureId> page;
    std::int64_t total = 0;
};

Result<FoundIds> search(const Library& library, const Query& query, const FindOptions& options) {
    Connection& connection = library.connection();
    QueryMatcher matcher(connection, library.folding());
    FoundIds found;
    PANTILE_ASSIGN_OR_RETURN(IdSet ids, matcher.matches(query));
    PANTILE_ASSIGN_OR_RETURN(found.page, inOrder(connection, query, matcher, options, ids));
    found.total = ids.size();
    return found;
}

Result<void> checkOptions(const FindOptions& options) {
    return core::checkRange("the offset", options.offset, 0,
                            std::numeric_limits<std::int64_t>::max());
}

}  // namespace

Result<std::optional<TextureId>> findByContent(const Library& library, const core::Grid& grid,
                                               const core::Palette& palette) {
    using Found = std::optional<TextureId>;
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(const auto content, findContentId(connection, grid, palette));
    if (!content) return Found();
    PANTILE_ASSIGN_OR_RETURN(
        const auto id,
        findNumber(connection, "SELECT id FROM textures WHERE content_id = ?1", {*content}));
    if (!id) return Found();
    return Found(TextureId{*id});
}

Result<TextureRecord> readTexture(const Library& library, TextureId id) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(std::vector<TextureRow> rows, rowsOf(connection, {&id, 1}));
    PANTILE_ASSIGN_OR_RETURN(
        const auto contentId,
        findNumber(connection, "SELECT content_id FROM textures WHERE id = ?1", {id.value}));
    if (!contentId) return noSuchTexture(id);
    Result<Content> content = loadContent(connection, *contentId);
    if (!content) {
        if (content.error().kind != core::ErrorKind::Corrupt) return content.error();
        return corruptError("the picture of texture " + std::to_string(id.value));
    }
    TextureRow& row = rows.front();
    core::TextureText text{row.title, row.author, row.licence, row.source, row.note, row.tags};
    Result<core::Texture> texture = core::Texture::create(
        std::move(content->grid), std::move(content->palette), std::move(text));
    if (!texture) return corruptError("the text of texture " + std::to_string(id.value));
    return TextureRecord{std::move(row), *std::move(texture)};
}

Result<std::vector<TextureRow>> readRows(const Library& library, std::span<const TextureId> ids) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    return rowsOf(connection, ids);
}

Result<std::vector<EstimateKey>> estimateKeys(const Library& library) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row, Statement::prepare(library.connection(),
                                          "SELECT t.id, e.profile_key FROM textures t LEFT JOIN "
                                          "estimates e ON e.texture_id = t.id ORDER BY t.id"));
    std::vector<EstimateKey> keys;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) return keys;
        keys.push_back({TextureId{row.integer(0)}, row.textOrNull(1)});
    }
}

Result<FoundTextures> findTextures(const Library& library, const Query& query,
                                   const FindOptions& options) {
    PANTILE_RETURN_IF_ERROR(checkOptions(options));
    Connection& connection = library.connection();
    PANTILE_RETURN_IF_ERROR(connection.indexChanges().write(connection));
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(const FoundIds ids, search(library, query, options));
    FoundTextures found;
    found.total = ids.total;
    PANTILE_ASSIGN_OR_RETURN(found.rows, rowsOf(connection, ids.page));
    return found;
}

Result<std::vector<TextureId>> findIds(const Library& library, const Query& query,
                                       const FindOptions& options) {
    PANTILE_RETURN_IF_ERROR(checkOptions(options));
    Connection& connection = library.connection();
    PANTILE_RETURN_IF_ERROR(connection.indexChanges().write(connection));
    PANTILE_ASSIGN_OR_RETURN(const Transaction moment, Transaction::beginReading(connection));
    PANTILE_ASSIGN_OR_RETURN(FoundIds found, search(library, query, options));
    return std::move(found.page);
}

}  // namespace pantile::catalogue
