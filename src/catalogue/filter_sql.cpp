#include "catalogue/filter_sql.h"

#include "catalogue/word_index.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using Field = TextFilter::Field;

// The fields in the order of kWordFields.
int numberOf(Field field) {
    return static_cast<int>(field) - static_cast<int>(Field::Title);
}

std::string textColumn(Field field) {
    return std::string(kWordFields[static_cast<std::size_t>(numberOf(field))]);
}

/// Folded text as one phrase of the index's own language.
std::string phrase(std::string_view folded) {
    std::string text = "\"";
    for (const char c : folded) {
        if (c == '"') text += '"';
        text += c;
    }
    return text + "\"";
}

/// The ids of textures in whose field, or any of the fields, the folded text occurs.
SqlPiece idsWithText(Field field, const std::string& folded) {
    constexpr std::size_t kIndexed = 3;  // The index knows parts of three letters.
    const bool any = field == Field::Any;
    const std::string number = std::to_string(numberOf(field));
    if (core::codePointCount(folded) >= kIndexed) {
        return {"SELECT rowid >> 3 FROM words WHERE words MATCH ?" +
                    (any ? "" : " AND rowid & 7 = " + number),
                {phrase(folded)}};
    }
    // Every letter of a text begins a part, so shorter text is the beginning of one.
    const std::string last = folded + "\U0010FFFF";
    return {"SELECT doc >> 3 FROM word_beginnings WHERE term >= ? AND term <= ?" +
                (any ? "" : " AND doc & 7 = " + number),
            {folded, last}};
}

SqlPiece idIn(const SqlPiece& ids) {
    SqlPiece piece{"f.texture_id IN (", {}};
    piece.append(ids);
    piece.sql += ")";
    return piece;
}

SqlPiece anywhere(const std::string& folded) {
    SqlPiece ids = idsWithText(Field::Any, folded);
    ids.append(
        {" UNION ALL SELECT texture_id FROM texture_tags WHERE tag_id IN (SELECT id FROM tags "
         "WHERE instr(folded, ?) OR folded IN (SELECT fold(tag) FROM tag_aliases WHERE "
         "instr(alias, ?)))",
         {folded, folded}});
    return idIn(ids);
}

class FilterSql {
public:
    explicit FilterSql(const TextFolding& folding) : m_folding(folding) {}

    SqlPiece operator()(const TextFilter& filter) const {
        const std::string folded = m_folding.fold(filter.text);
        if (filter.field == Field::Any) return anywhere(folded);
        if (!filter.text.empty()) return idIn(idsWithText(filter.field, folded));
        return {
            "f.texture_id IN (SELECT id FROM textures WHERE " + textColumn(filter.field) + " = '')",
            {}};
    }

    SqlPiece operator()(const NameFilter& filter) const {
        return filter.name.empty() ? withoutName(filter.kind)
                                   : withName(filter.kind, m_folding.fold(filter.name));
    }

    SqlPiece operator()(const NumberFilter& filter) const {
        return {columnOf(filter.field) + signOf(filter.comparison), {filter.value}};
    }

    SqlPiece operator()(const ColourFilter& filter) const {
        const std::int64_t colour =
            (filter.colour.r * 256 + filter.colour.g) * 256 + filter.colour.b;
        return {
            "(f.palette_id IN (SELECT id FROM palettes WHERE uses_near(colours, NULL, ?, ?)) AND "
            "uses_near((SELECT colours FROM palettes WHERE id = f.palette_id), f.used, ?, ?))",
            {colour, filter.thousandths, colour, filter.thousandths}};
    }

    SqlPiece operator()(const RemovedFilter& /*filter*/) const { return {"f.removed", {}}; }

    SqlPiece operator()(const SeamlessFilter& /*filter*/) const {
        return {"f.seam <= ?", {kSeamlessHundredths}};
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

    static SqlPiece withoutName(NameFilter::Kind kind) {
        switch (kind) {
            case NameFilter::Kind::Tag:
                return {"f.texture_id NOT IN (SELECT texture_id FROM texture_tags)", {}};
            case NameFilter::Kind::Shelf:
                return {"f.texture_id NOT IN (SELECT texture_id FROM shelf_textures)", {}};
            case NameFilter::Kind::Palette:
                return {"f.palette_id NOT IN (SELECT palette_id FROM palette_names)", {}};
            case NameFilter::Kind::On:
                return {"f.texture_id NOT IN (SELECT texture_id FROM load_slots)", {}};
            case NameFilter::Kind::Canvas:
                break;
        }
        return {
            "NOT EXISTS (SELECT 1 FROM canvases v LEFT JOIN palettes q ON q.id = v.palette_id "
            "WHERE f.width <= v.width AND f.height <= v.height AND CASE WHEN q.id IS NULL THEN "
            "f.colours <= v.free_colours ELSE uses_only((SELECT colours FROM palettes WHERE id = "
            "f.palette_id), f.used, q.colours) END)",
            {}};
    }

    static SqlPiece withName(NameFilter::Kind kind, const std::string& folded) {
        switch (kind) {
            case NameFilter::Kind::Tag:
                return withTag(folded);
            case NameFilter::Kind::Shelf:
                return {
                    "f.texture_id IN (SELECT x.texture_id FROM shelves s JOIN shelf_textures x ON "
                    "x.shelf_id = s.id WHERE fold(s.name) = ?)",
                    {folded}};
            case NameFilter::Kind::Palette:
                return {
                    "f.palette_id IN (SELECT palette_id FROM palette_names WHERE fold(name) = ?)",
                    {folded}};
            case NameFilter::Kind::On:
                return {
                    "f.texture_id IN (SELECT x.texture_id FROM load_slots x JOIN loads l ON l.id = "
                    "x.load_id JOIN boards b ON b.id = l.board_id WHERE fold(l.name) = ? OR "
                    "fold(b.name) = ?)",
                    {folded, folded}};
            case NameFilter::Kind::Canvas:
                break;
        }
        return fittingCanvas(folded);
    }

    /// '0' follows '/': between them lies what begins with the tag and a '/'.
    static SqlPiece withTag(const std::string& folded) {
        return {
            "f.texture_id IN (SELECT x.texture_id FROM (SELECT ifnull((SELECT fold(tag) FROM "
            "tag_aliases WHERE alias = ?), ?) AS name) r JOIN tags g ON g.folded = r.name OR "
            "(g.folded > r.name || '/' AND g.folded < r.name || '0') JOIN texture_tags x ON "
            "x.tag_id = g.id)",
            {folded, folded}};
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

    const TextFolding& m_folding;
};

}  // namespace

SqlPiece filterSql(const Filter& filter, const TextFolding& folding) {
    return std::visit(FilterSql(folding), filter);
}

SqlPiece titleHolds(std::string_view word, const TextFolding& folding) {
    return idIn(idsWithText(Field::Title, folding.fold(word)));
}

}  // namespace pantile::catalogue
