#include "catalogue/filter_sql.h"

#include <string>
#include <string_view>

#include "catalogue/word_page.h"

namespace pantile::catalogue {
namespace {

using core::Result;
using Field = TextFilter::Field;

std::string textColumn(Field field) {
    const auto number = static_cast<std::size_t>(field) - static_cast<std::size_t>(Field::Title);
    return std::string(kWordFields[number]);
}

class FilterSql {
public:
    FilterSql(QuerySets& sets, QuerySets::Use use) : m_sets(sets), m_use(use) {}

    Result<SqlPiece> operator()(const TextFilter& filter) const {
        if (filter.text.empty() && filter.field != Field::Any) {
            return m_sets.isOneOf(
                {"SELECT id FROM textures WHERE " + textColumn(filter.field) + " = ''", {}}, m_use);
        }
        const std::string folded = m_sets.fold(filter.text);
        // An accent alone is nothing when folded, which stands everywhere.
        if (folded.empty()) return SqlPiece{"1", {}};
        return m_sets.holds(filter.field, folded, m_use);
    }

    Result<SqlPiece> operator()(const NameFilter& filter) const {
        return filter.name.empty() ? withoutName(filter.kind)
                                   : withName(filter.kind, m_sets.fold(filter.name));
    }

    Result<SqlPiece> operator()(const NumberFilter& filter) const {
        return SqlPiece{columnOf(filter.field) + signOf(filter.comparison), {filter.value}};
    }

    Result<SqlPiece> operator()(const ColourFilter& filter) const {
        PANTILE_ASSIGN_OR_RETURN(NearEntries * near, m_sets.nearEntries(filter));
        return SqlPiece{"paints_near(?, f.palette_id, f.used)", {bound(*near)}};
    }

    Result<SqlPiece> operator()(const LikeFilter& filter) const {
        if (!filter.found) {
            return core::Error{core::ErrorKind::Internal,
                               "look-alikes were asked for and not looked up",
                               "report this as a fault of the program"};
        }
        return m_sets.isOneOf(*filter.found, m_use);
    }

    Result<SqlPiece> operator()(const RemovedFilter& /*filter*/) const {
        return SqlPiece{"f.removed", {}};
    }

    Result<SqlPiece> operator()(const SeamlessFilter& /*filter*/) const {
        return SqlPiece{"f.seam <= ?", {kSeamlessHundredths}};
    }

private:
    static std::string columnOf(NumberFilter::Field field) {
        switch (field) {
            case NumberFilter::Field::Width:
                return "f.width";
            case NumberFilter::Field::Height:
                return "f.height";
            case NumberFilter::Field::Colours:
                return "f.colours";
            case NumberFilter::Field::Stars:
                return "f.stars";
            case NumberFilter::Field::Bytes:
                return "f.load_bytes";
            case NumberFilter::Field::DrawMs:
                return "f.draw_ms";
            case NumberFilter::Field::Id:
                return "f.texture_id";
            case NumberFilter::Field::AddedAt:
                return "f.added_at";
            case NumberFilter::Field::ChangedAt:
                break;
        }
        return "f.changed_at";
    }

    static std::string signOf(Comparison comparison) {
        switch (comparison) {
            case Comparison::Less:
                return " < ?";
            case Comparison::LessOrEqual:
                return " <= ?";
            case Comparison::Equal:
                return " = ?";
            case Comparison::GreaterOrEqual:
                return " >= ?";
            case Comparison::Greater:
                break;
        }
        return " > ?";
    }

    Result<SqlPiece> withoutName(NameFilter::Kind kind) const {
        switch (kind) {
            case NameFilter::Kind::Tag:
                return notOneOf({"SELECT texture_id AS id FROM texture_tags", {}});
            case NameFilter::Kind::Shelf:
                return notOneOf({"SELECT texture_id AS id FROM shelf_textures", {}});
            case NameFilter::Kind::On:
                return notOneOf({"SELECT texture_id AS id FROM load_slots", {}});
            case NameFilter::Kind::Palette:
                return SqlPiece{"f.palette_id NOT IN (SELECT palette_id FROM palette_names)", {}};
            case NameFilter::Kind::Canvas:
                break;
        }
        return SqlPiece{
            "NOT EXISTS (SELECT 1 FROM canvases v LEFT JOIN palettes q ON q.id = v.palette_id "
            "WHERE f.width <= v.width AND f.height <= v.height AND CASE WHEN q.id IS NULL THEN "
            "f.colours <= v.free_colours ELSE uses_only((SELECT colours FROM palettes WHERE id = "
            "f.palette_id), f.used, q.colours) END)",
            {}};
    }

    Result<SqlPiece> notOneOf(const SqlPiece& ids) const {
        PANTILE_ASSIGN_OR_RETURN(SqlPiece piece, m_sets.isOneOf(ids, QuerySets::Use::Asked));
        piece.sql = "NOT " + piece.sql;
        return piece;
    }

    Result<SqlPiece> withName(NameFilter::Kind kind, const std::string& folded) const {
        switch (kind) {
            case NameFilter::Kind::Tag:
                return withTag(folded);
            case NameFilter::Kind::Shelf:
                return m_sets.isOneOf(
                    {"SELECT x.texture_id AS id FROM shelves s JOIN shelf_textures x ON x.shelf_id "
                     "= s.id WHERE fold(s.name) = ?",
                     {folded}},
                    m_use);
            case NameFilter::Kind::Palette:
                return SqlPiece{
                    "f.palette_id IN (SELECT palette_id FROM palette_names WHERE fold(name) = ?)",
                    {folded}};
            case NameFilter::Kind::On:
                return m_sets.isOneOf(
                    {"SELECT x.texture_id AS id FROM load_slots x JOIN loads l ON l.id = x.load_id "
                     "JOIN boards b ON b.id = l.board_id WHERE fold(l.name) = ? OR fold(b.name) = "
                     "?",
                     {folded, folded}},
                    m_use);
            case NameFilter::Kind::Canvas:
                break;
        }
        return fittingCanvas(folded);
    }

    /// '0' follows '/': between them lies what begins with the tag and a '/'.
    Result<SqlPiece> withTag(const std::string& folded) const {
        return m_sets.isOneOf(
            {"SELECT x.texture_id AS id FROM (SELECT ifnull((SELECT fold(tag) FROM tag_aliases "
             "WHERE alias = ?), ?) AS name) r JOIN tags g ON g.folded = r.name OR (g.folded > "
             "r.name || '/' AND g.folded < r.name || '0') JOIN texture_tags x ON x.tag_id = g.id",
             {folded, folded}},
            m_use);
    }

    /// What is asked of the canvas alone is asked once, not for each texture.
    static SqlPiece fittingCanvas(const std::string& folded) {
        const std::string from = " FROM canvases v WHERE fold(v.name) = ?)";
        const std::string palette =
            "(SELECT q.colours FROM canvases v JOIN palettes q ON q.id = v.palette_id WHERE "
            "fold(v.name) = ?)";
        return {"(f.width <= (SELECT v.width" + from + " AND f.height <= (SELECT v.height" + from +
                    " AND CASE WHEN " + palette +
                    " IS NULL THEN f.colours <= (SELECT "
                    "v.free_colours" +
                    from +
                    " ELSE f.palette_id IN (SELECT id FROM palettes WHERE uses_only(colours, "
                    "NULL, " +
                    palette +
                    ")) OR uses_only((SELECT colours FROM palettes WHERE id "
                    "= f.palette_id), f.used, " +
                    palette + ") END)",
                {folded, folded, folded, folded, folded, folded}};
    }

    QuerySets& m_sets;
    QuerySets::Use m_use;
};

}  // namespace

Result<SqlPiece> filterSql(const Filter& filter, QuerySets& sets, QuerySets::Use use) {
    return std::visit(FilterSql(sets, use), filter);
}

}  // namespace pantile::catalogue
