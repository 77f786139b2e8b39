#include "catalogue/query_matcher.h"

#include <algorithm>
#include <functional>
#include <limits>
#include <span>
#include <variant>

#include "catalogue/sql_functions.h"
#include "core/colour_neighbourhood.h"

namespace pantile::catalogue {
namespace {

using core::Result;
using AskedName = NameFilter::Kind;

std::size_t wordField(TextFilter::Field field) {
    return static_cast<std::size_t>(field) - static_cast<std::size_t>(TextFilter::Field::Title);
}

Fact factOf(NumberFilter::Field field) {
    switch (field) {
        case NumberFilter::Field::Width:
            return Fact::Width;
        case NumberFilter::Field::Height:
            return Fact::Height;
        case NumberFilter::Field::Colours:
            return Fact::Colours;
        case NumberFilter::Field::Stars:
            return Fact::Stars;
        case NumberFilter::Field::Bytes:
            return Fact::LoadBytes;
        case NumberFilter::Field::DrawMs:
            return Fact::DrawMs;
        case NumberFilter::Field::AddedAt:
            return Fact::AddedAt;
        case NumberFilter::Field::Id:
        case NumberFilter::Field::ChangedAt:
            break;
    }
    return Fact::ChangedAt;
}

/// Adds the textures of the page whose place passes the test.
template <typename Test>
void addPlaces(IdSet& ids, std::int64_t firstId, Test test) {
    constexpr std::size_t kRun = 64;
    for (std::size_t begin = 0; begin < kTexturesPerFactPage; begin += kRun) {
        std::uint64_t bits = 0;
        for (std::size_t i = 0; i < kRun; ++i) {
            bits |= static_cast<std::uint64_t>(test(begin + i)) << i;
        }
        ids.addRun(firstId + static_cast<std::int64_t>(begin), bits);
    }
}

/// Calls `visit` with each page of some facts; `visit` gives the test of addPlaces.
template <typename Visit>
Result<IdSet> idsWhere(Connection& connection, std::initializer_list<Fact> facts, Visit visit) {
    IdSet ids;
    PANTILE_ASSIGN_OR_RETURN(FactReader reader, FactReader::create(connection, facts));
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, reader.next());
        if (!more) return ids;
        addPlaces(ids, reader.firstId(), visit(reader));
    }
}

/// Those whose fact passes the test. Where there is no texture, any may be in it.
template <typename Test>
Result<IdSet> idsWhere(Connection& connection, Fact fact, Test test) {
    return idsWhere(connection, {fact}, [&](const FactReader& reader) {
        const FactValues& values = reader.values(0);
        return [&values, &test](std::size_t place) { return test(values[place]); };
    });
}

/// What `visit` gives for the function object that compares so.
template <typename Visit>
auto withOrder(Comparison comparison, Visit visit) {
    switch (comparison) {
        case Comparison::Less:
            return visit(std::less<>());
        case Comparison::LessOrEqual:
            return visit(std::less_equal<>());
        case Comparison::Equal:
            return visit(std::equal_to<>());
        case Comparison::GreaterOrEqual:
            return visit(std::greater_equal<>());
        case Comparison::Greater:
            break;
    }
    return visit(std::greater<>());
}

/// One of which the number is not known does not match.
Result<IdSet> compared(Connection& connection, Fact fact, Comparison comparison,
                       std::int64_t value) {
    return withOrder(comparison, [&](auto order) {
        return idsWhere(connection, fact, [order, value](std::int64_t found) {
            return order(found, value) && found != kUnknownFact;
        });
    });
}

/// The colours of palettes as stored, sorted.
std::vector<core::Rgb8> coloursIn(std::string_view bytes) {
    std::vector<core::Rgb8> colours;
    const auto byteAt = [&](std::size_t i) { return static_cast<std::uint8_t>(bytes[i]); };
    for (std::size_t i = 0; i + 2 < bytes.size(); i += 3) {
        colours.push_back({byteAt(i), byteAt(i + 1), byteAt(i + 2)});
    }
    std::sort(colours.begin(), colours.end());
    return colours;
}

/// Textures whose tags, or other words for them, hold the text.
constexpr std::string_view kTaggedLike =
    "SELECT texture_id AS id FROM texture_tags WHERE tag_id IN (SELECT id FROM tags WHERE "
    "instr(folded, ?2) OR folded IN (SELECT fold(tag) FROM tag_aliases WHERE instr(alias, ?2)))";

/// Those that have a tag, or one below it: '0' follows '/', and between them lies what begins with
/// the tag and a '/'.
constexpr std::string_view kTagged =
    "SELECT x.texture_id AS id FROM (SELECT ifnull((SELECT fold(tag) FROM tag_aliases WHERE alias "
    "= ?2), ?2) AS name) r JOIN tags g ON g.folded = r.name OR (g.folded > r.name || '/' AND "
    "g.folded < r.name || '0') JOIN texture_tags x ON x.tag_id = g.id";

constexpr std::string_view kOnShelf =
    "SELECT x.texture_id AS id FROM shelves s JOIN shelf_textures x ON x.shelf_id = s.id WHERE "
    "fold(s.name) = ?2";

constexpr std::string_view kInLoad =
    "SELECT x.texture_id AS id FROM load_slots x JOIN loads l ON l.id = x.load_id JOIN boards b ON "
    "b.id = l.board_id WHERE fold(l.name) = ?2 OR fold(b.name) = ?2";

void collectWords(const QueryNode& node, std::vector<std::string>& words) {
    if (node.kind == QueryNode::Kind::Not) return;
    const auto* filter = std::get_if<TextFilter>(&node.filter);
    const bool isWord = node.kind == QueryNode::Kind::Match && filter != nullptr &&
                        filter->field == TextFilter::Field::Any;
    if (isWord) words.push_back(filter->text);
    for (const QueryNode& part : node.parts) collectWords(part, words);
}

}  // namespace

/// What each kind of filter is answered by.
struct QueryMatcher::Answer {
    QueryMatcher& matcher;

    Result<IdSet> operator()(const TextFilter& filter) const { return matcher.text(filter); }

    Result<IdSet> operator()(const NameFilter& filter) const { return matcher.name(filter); }

    Result<IdSet> operator()(const NumberFilter& filter) const { return matcher.number(filter); }

    Result<IdSet> operator()(const ColourFilter& filter) const { return matcher.colour(filter); }

    Result<IdSet> operator()(const LikeFilter& filter) const {
        if (!filter.found) {
            return core::Error{core::ErrorKind::Internal,
                               "look-alikes were asked for and not looked up",
                               "report this as a fault of the program"};
        }
        IdSet ids;
        for (const core::TextureId id : *filter.found) ids.add(id.value);
        return ids;
    }

    Result<IdSet> operator()(const RemovedFilter& /*filter*/) const {
        PANTILE_ASSIGN_OR_RETURN(const Present* present, matcher.present());
        return present->removed;
    }

    Result<IdSet> operator()(const SeamlessFilter& /*filter*/) const {
        return compared(matcher.m_connection, Fact::Seam, Comparison::LessOrEqual,
                        kSeamlessHundredths);
    }
};

Result<IdSet> QueryMatcher::matches(const Query& query) {
    PANTILE_ASSIGN_OR_RETURN(IdSet ids, node(query.root));
    PANTILE_ASSIGN_OR_RETURN(const Present* known, present());
    ids.intersect(known->all);
    if (!query.namesRemoved) ids.subtract(known->removed);
    return ids;
}

Result<const QueryMatcher::Present*> QueryMatcher::present() {
    if (m_present) return &*m_present;
    Present found;
    PANTILE_ASSIGN_OR_RETURN(FactReader reader, FactReader::create(m_connection, {Fact::Presence}));
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, reader.next());
        if (!more) break;
        const FactValues& values = reader.values(0);
        addPlaces(found.all, reader.firstId(),
                  [&](std::size_t place) { return values[place] != kNoTexture; });
        addPlaces(found.removed, reader.firstId(),
                  [&](std::size_t place) { return values[place] == kRemovedTexture; });
    }
    return &m_present.emplace(std::move(found));
}

Result<IdSet> QueryMatcher::complement(const IdSet& ids) {
    PANTILE_ASSIGN_OR_RETURN(const Present* known, present());
    IdSet others = known->all;
    others.subtract(ids);
    return others;
}

Result<IdSet> QueryMatcher::idsFrom(std::string_view select, std::string_view value) {
    IdSet ids;
    // Row by row they would take twice the time.
    const std::string sql = "SELECT count(keep_in(?1, id)), ?2 FROM (" + std::string(select) + ")";
    PANTILE_ASSIGN_OR_RETURN(Statement statement,
                             Statement::prepare(m_connection, sql, {bound(ids), value}));
    PANTILE_RETURN_IF_ERROR(statement.run());
    return ids;
}

Result<IdSet> QueryMatcher::node(const QueryNode& node) {
    switch (node.kind) {
        case QueryNode::Kind::Match:
            return std::visit(Answer{*this}, node.filter);
        case QueryNode::Kind::Not: {
            PANTILE_ASSIGN_OR_RETURN(const IdSet ids, this->node(node.parts.front()));
            return complement(ids);
        }
        case QueryNode::Kind::AnyOf: {
            IdSet ids;
            for (const QueryNode& part : node.parts) {
                PANTILE_ASSIGN_OR_RETURN(const IdSet more, this->node(part));
                ids.unite(more);
            }
            return ids;
        }
        case QueryNode::Kind::AllOf:
            break;
    }
    return allOf(node.parts);
}

Result<IdSet> QueryMatcher::allOf(const std::vector<QueryNode>& parts) {
    if (parts.empty()) return complement({});
    PANTILE_ASSIGN_OR_RETURN(IdSet ids, node(parts.front()));
    for (const QueryNode& part : std::span(parts).subspan(1)) {
        PANTILE_ASSIGN_OR_RETURN(const IdSet more, node(part));
        ids.intersect(more);
    }
    return ids;
}

Result<IdSet> QueryMatcher::text(const TextFilter& filter) {
    const bool isAny = filter.field == TextFilter::Field::Any;
    if (filter.text.empty() && !isAny) {
        const std::string field(kWordFields[wordField(filter.field)]);
        return idsFrom("SELECT id FROM textures WHERE " + field + " = ''");
    }
    const std::string folded = fold(filter.text);
    // An accent alone is nothing when folded, which stands everywhere.
    if (folded.empty()) return complement({});
    PANTILE_ASSIGN_OR_RETURN(const WordSets* sets, wordSets(folded));
    if (!isAny) return (*sets)[wordField(filter.field)];
    PANTILE_ASSIGN_OR_RETURN(IdSet ids, idsFrom(kTaggedLike, folded));
    for (const IdSet& some : *sets) ids.unite(some);
    return ids;
}

Result<const WordSets*> QueryMatcher::wordSets(const std::string& folded) {
    const auto known = m_wordSets.find(folded);
    if (known != m_wordSets.end()) return &known->second;
    PANTILE_ASSIGN_OR_RETURN(WordSets sets, searchWords(m_connection, folded));
    return &m_wordSets.emplace(folded, std::move(sets)).first->second;
}

Result<IdSet> QueryMatcher::name(const NameFilter& filter) {
    if (filter.name.empty()) return without(filter.kind);
    const std::string folded = fold(filter.name);
    switch (filter.kind) {
        case AskedName::Tag:
            return idsFrom(kTagged, folded);
        case AskedName::Shelf:
            return idsFrom(kOnShelf, folded);
        case AskedName::On:
            return idsFrom(kInLoad, folded);
        case AskedName::Palette: {
            PANTILE_ASSIGN_OR_RETURN(
                const IdSet palettes,
                idsFrom("SELECT palette_id AS id FROM palette_names WHERE fold(name) = ?2",
                        folded));
            return withPalette(palettes);
        }
        case AskedName::Canvas:
            break;
    }
    return fitting(&folded);
}

Result<IdSet> QueryMatcher::without(AskedName kind) {
    const auto having = [&]() -> Result<IdSet> {
        switch (kind) {
            case AskedName::Tag:
                return idsFrom("SELECT texture_id AS id FROM texture_tags");
            case AskedName::Shelf:
                return idsFrom("SELECT texture_id AS id FROM shelf_textures");
            case AskedName::On:
                return idsFrom("SELECT texture_id AS id FROM load_slots");
            case AskedName::Palette: {
                PANTILE_ASSIGN_OR_RETURN(const IdSet palettes,
                                         idsFrom("SELECT palette_id AS id FROM palette_names"));
                return withPalette(palettes);
            }
            case AskedName::Canvas:
                break;
        }
        return fitting(nullptr);
    };
    PANTILE_ASSIGN_OR_RETURN(const IdSet ids, having());
    return complement(ids);
}

Result<IdSet> QueryMatcher::withPalette(const IdSet& palettes) {
    return idsWhere(m_connection, Fact::Palette,
                    [&](std::int64_t palette) { return palettes.has(palette); });
}

Result<IdSet> QueryMatcher::number(const NumberFilter& filter) {
    if (filter.field != NumberFilter::Field::Id) {
        return compared(m_connection, factOf(filter.field), filter.comparison, filter.value);
    }
    PANTILE_ASSIGN_OR_RETURN(const Present* known, present());
    return withOrder(filter.comparison, [&](auto order) -> Result<IdSet> {
        IdSet ids;
        known->all.forEach([&](std::int64_t id) {
            if (order(id, filter.value)) ids.add(id);
        });
        return ids;
    });
}

Result<IdSet> QueryMatcher::colour(const ColourFilter& filter) {
    constexpr double kThousandths = 1000;
    const core::ColourNeighbourhood near(filter.colour,
                                         static_cast<double>(filter.thousandths) / kThousandths);
    EntrySets entries([near](core::Rgb8 colour) { return near.holds(colour); });
    return painting(entries);
}

Result<IdSet> QueryMatcher::painting(EntrySets& entries) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement statement,
        Statement::prepare(m_connection,
                           "SELECT count(keep_entries(?1, id, colours)) FROM palettes",
                           {bound(entries)}));
    PANTILE_RETURN_IF_ERROR(statement.run());
    return idsWhere(m_connection,
                    {Fact::Palette, Fact::Used0, Fact::Used64, Fact::Used128, Fact::Used192},
                    [&](const FactReader& reader) {
                        return [&](std::size_t place) {
                            EntryBits used;
                            for (std::size_t i = 0; i < used.size(); ++i) {
                                used[i] = static_cast<std::uint64_t>(reader.values(i + 1)[place]);
                            }
                            return entries.hasOneOf(reader.values(0)[place], used);
                        };
                    });
}

Result<IdSet> QueryMatcher::fitting(const std::string* foldedName) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement canvas,
        Statement::prepare(m_connection,
                           "SELECT v.width, v.height, v.free_colours, q.colours FROM canvases v "
                           "LEFT JOIN palettes q ON q.id = v.palette_id WHERE ?1 IS NULL OR "
                           "fold(v.name) = ?1",
                           {foldedName == nullptr ? BoundValue() : BoundValue(*foldedName)}));
    IdSet ids;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, canvas.step());
        if (!more) return ids;
        PANTILE_ASSIGN_OR_RETURN(const IdSet fit, fittingOne(canvas));
        ids.unite(fit);
    }
}

Result<IdSet> QueryMatcher::fittingOne(Statement& canvas) {
    const std::int64_t width = canvas.integer(0);
    const std::int64_t height = canvas.integer(1);
    const bool isFree = canvas.isNull(3);
    const std::int64_t most = isFree ? canvas.integer(2) : std::numeric_limits<std::int64_t>::max();
    PANTILE_ASSIGN_OR_RETURN(IdSet ids,
                             idsWhere(m_connection, {Fact::Width, Fact::Height, Fact::Colours},
                                      [=](const FactReader& reader) {
                                          return [=, &reader](std::size_t place) {
                                              return reader.values(0)[place] <= width &&
                                                     reader.values(1)[place] <= height &&
                                                     reader.values(2)[place] <= most;
                                          };
                                      }));
    if (isFree) return ids;
    EntrySets foreign([offered = coloursIn(canvas.bytesView(3))](core::Rgb8 colour) {
        return !std::binary_search(offered.begin(), offered.end(), colour);
    });
    PANTILE_ASSIGN_OR_RETURN(const IdSet unfit, painting(foreign));
    ids.subtract(unfit);
    return ids;
}

std::vector<std::string> wordsOf(const Query& query) {
    std::vector<std::string> words;
    collectWords(query.root, words);
    return words;
}

}  // namespace pantile::catalogue
