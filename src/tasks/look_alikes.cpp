#include "tasks/look_alikes.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>

#include "catalogue/looks.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "core/range_check.h"
#include "picture/look_alike.h"
#include "tasks/look_table.h"

namespace pantile::tasks {

using catalogue::Library;
using catalogue::TextureRecord;
using core::Result;
using core::TextureId;

namespace {

constexpr std::int64_t kLooksAtOnce = 100;

picture::Look lookOfTexture(const core::Texture& texture) {
    return picture::lookOf(texture.grid(), texture.palette());
}

/// Of two textures that are compared, the one whose making is told.
enum class Told { Other, This };

/// One texture to which others are compared. It is read when that is known to be of use.
class Original {
public:
    Original(const Library& library, TextureId id) : m_library(library), m_id(id) {}

    TextureId id() const { return m_id; }

    Result<const TextureRecord*> record() {
        if (!m_record) {
            PANTILE_ASSIGN_OR_RETURN(m_record, catalogue::readTexture(m_library, m_id));
        }
        return &*m_record;
    }

    Result<std::optional<LookAlike>> ofSameShape(TextureId other, Told told) {
        return compared(other, told, [](const core::Texture& from, const core::Texture& to) {
            return picture::sameShape(from.grid(), from.palette(), to.grid(), to.palette());
        });
    }

    Result<std::optional<LookAlike>> near(TextureId other, int within, Told told) {
        return compared(other, told, [&](const core::Texture& from, const core::Texture& to) {
            return picture::nearlySame(from.grid(), from.palette(), to.grid(), to.palette(),
                                       within);
        });
    }

private:
    template <typename Compare>
    Result<std::optional<LookAlike>> compared(TextureId other, Told told, Compare compare) {
        PANTILE_ASSIGN_OR_RETURN(const TextureRecord* const mine, record());
        const auto theirs = catalogue::readTexture(m_library, other);
        // A damaged picture looks like nothing; the check tells of it.
        if (!theirs && theirs.error().kind == core::ErrorKind::Corrupt)
            return std::optional<LookAlike>();
        if (!theirs) return theirs.error();
        const std::optional<picture::Likeness> found =
            told == Told::Other ? compare(mine->texture, theirs->texture)
                                : compare(theirs->texture, mine->texture);
        if (!found) return std::optional<LookAlike>();
        return std::optional(LookAlike{other, theirs->row.title, found->distance, found->how});
    }

    const Library& m_library;
    TextureId m_id;
    std::optional<TextureRecord> m_record;
};

using Found = std::map<TextureId, LookAlike>;

/// Adds those of the same shape to `found`.
Result<void> addSameShape(Original& original, std::span<const TextureId> others, Found& found) {
    for (const TextureId other : others) {
        if (other == original.id()) continue;
        PANTILE_ASSIGN_OR_RETURN(const auto alike, original.ofSameShape(other, Told::Other));
        if (alike) found.emplace(other, *alike);
    }
    return {};
}

/// What `near` of a table gave, as textures that are there now and can be compared.
Result<std::vector<TextureId>> comparable(const Library& library, Original& original,
                                          std::span<const std::int64_t> contents) {
    std::vector<TextureId> ids;
    for (const std::int64_t content : contents) {
        PANTILE_ASSIGN_OR_RETURN(const auto texture, catalogue::textureOfContent(library, content));
        if (!texture || texture->id == original.id()) continue;
        PANTILE_ASSIGN_OR_RETURN(const TextureRecord* const record, original.record());
        if (picture::sizesCompare(record->texture.grid().size(), texture->size))
            ids.push_back(texture->id);
    }
    std::sort(ids.begin(), ids.end());
    return ids;
}

Result<void> addNear(Original& original, std::span<const TextureId> others, int within,
                     const core::Progress& progress, Found& found) {
    for (const TextureId other : others) {
        if (found.contains(other)) continue;
        if (progress.stopRequested()) return core::stoppedError();
        PANTILE_ASSIGN_OR_RETURN(const auto alike, original.near(other, within, Told::Other));
        if (alike) found.emplace(other, *alike);
    }
    return {};
}

std::vector<LookAlike> likestFirst(const Found& found) {
    std::vector<LookAlike> list;
    for (const auto& [id, alike] : found) list.push_back(alike);
    std::stable_sort(list.begin(), list.end(), [](const LookAlike& a, const LookAlike& b) {
        return a.distance < b.distance;
    });
    return list;
}

Result<void> checkWithin(int within) {
    return core::checkRange("the distance", within, 0, 100);
}

/// The likest of those before it, the first of equals.
Result<std::optional<LookAlike>> likestBefore(const Library& library, TextureId id,
                                              const picture::Look& look, const LookTable& table,
                                              int within) {
    Original original(library, id);
    PANTILE_ASSIGN_OR_RETURN(const auto others, catalogue::texturesOfShape(library, look.shape));
    for (const TextureId other : others) {
        if (other >= id) break;
        PANTILE_ASSIGN_OR_RETURN(auto alike, original.ofSameShape(other, Told::This));
        if (alike) return alike;
    }
    std::optional<LookAlike> likest;
    PANTILE_ASSIGN_OR_RETURN(const auto near,
                             comparable(library, original, table.near(look, within)));
    for (const TextureId other : near) {
        if (other >= id || within < 0) break;
        PANTILE_ASSIGN_OR_RETURN(auto alike, original.near(other, within, Told::This));
        if (!alike) continue;
        within = alike->distance - 1;
        likest = std::move(alike);
    }
    return likest;
}

/// All of a library, in groups.
class Grouping {
public:
    Grouping(const Library& library, int within, const core::Progress& progress)
        : m_library(library), m_within(within), m_progress(progress) {}

    Result<std::vector<std::vector<LookAlike>>> run() {
        PANTILE_ASSIGN_OR_RETURN(const auto shared, catalogue::sharedShapes(m_library));
        for (const auto& ids : shared) {
            for (const TextureId id : ids) m_ofShape[id] = ids;
        }
        PANTILE_RETURN_IF_ERROR(m_within > 0 ? readLooks() : Result<void>());
        std::int64_t done = 0;
        const std::vector<TextureId> order = originals();
        for (const TextureId id : order) {
            m_progress.tell(done++, std::ssize(order), "comparing");
            if (m_progress.stopRequested()) return core::stoppedError();
            if (!m_grouped.contains(id)) PANTILE_RETURN_IF_ERROR(group(id));
        }
        m_progress.tell(done, done, "");
        return std::move(m_groups);
    }

private:
    Result<void> readLooks() {
        catalogue::FindOptions byId;
        byId.sort.field = catalogue::SortField::Id;
        PANTILE_ASSIGN_OR_RETURN(const auto all, catalogue::parseQuery(""));
        PANTILE_ASSIGN_OR_RETURN(const auto ids, catalogue::findIds(m_library, all, byId));
        std::vector<picture::Look> looks;
        for (const TextureId id : ids) {
            PANTILE_ASSIGN_OR_RETURN(const auto figures, catalogue::readLook(m_library, id));
            if (!figures) continue;
            looks.push_back(lookOf(*figures));
            m_looks.emplace(id, looks.back());
        }
        PANTILE_ASSIGN_OR_RETURN(m_table, LookTable::read(m_library, looks, m_within));
        return {};
    }

    std::vector<TextureId> originals() const {
        std::set<TextureId> ids;
        for (const auto& [id, others] : m_ofShape) ids.insert(id);
        for (const auto& [id, look] : m_looks) ids.insert(id);
        return {ids.begin(), ids.end()};
    }

    Result<void> group(TextureId id) {
        Original original(m_library, id);
        Found found;
        if (const auto shared = m_ofShape.find(id); shared != m_ofShape.end())
            PANTILE_RETURN_IF_ERROR(addSameShape(original, ungrouped(shared->second), found));
        if (const auto look = m_looks.find(id); look != m_looks.end()) {
            PANTILE_ASSIGN_OR_RETURN(
                const auto near,
                comparable(m_library, original, m_table.near(look->second, m_within)));
            PANTILE_RETURN_IF_ERROR(
                addNear(original, ungrouped(near), m_within, m_progress, found));
        }
        if (found.empty()) return {};
        PANTILE_ASSIGN_OR_RETURN(const TextureRecord* const record, original.record());
        m_groups.push_back({{id, record->row.title, 0, ""}});
        m_grouped.insert(id);
        for (LookAlike& alike : likestFirst(found)) {
            m_grouped.insert(alike.id);
            m_groups.back().push_back(std::move(alike));
        }
        return {};
    }

    std::vector<TextureId> ungrouped(std::span<const TextureId> ids) const {
        std::vector<TextureId> left;
        std::copy_if(ids.begin(), ids.end(), std::back_inserter(left),
                     [&](TextureId id) { return !m_grouped.contains(id); });
        return left;
    }

    const Library& m_library;
    int m_within;
    const core::Progress& m_progress;
    std::map<TextureId, std::vector<TextureId>> m_ofShape;
    std::map<TextureId, picture::Look> m_looks;  ///< If others are sought than those of one shape.
    LookTable m_table;
    std::set<TextureId> m_grouped;
    std::vector<std::vector<LookAlike>> m_groups;
};

}  // namespace

Result<void> noteLook(Library& library, TextureId id, const core::Texture& texture) {
    return catalogue::storeLook(library, id, figuresOf(lookOfTexture(texture)));
}

Result<void> workOutLooks(Library& library, const core::Progress& progress) {
    if (library.isReadOnly()) return {};
    constexpr auto kAll = std::numeric_limits<std::int64_t>::max();
    PANTILE_ASSIGN_OR_RETURN(const auto all, catalogue::missingLooks(library, 0, kAll));
    std::int64_t done = 0;
    for (std::int64_t last = 0; done < std::ssize(all);) {
        progress.tell(done, std::ssize(all), "looking at pictures for the first time");
        if (progress.stopRequested()) return core::stoppedError();
        // Nobody changes the pictures meanwhile.
        PANTILE_ASSIGN_OR_RETURN(catalogue::Transaction transaction, library.begin());
        PANTILE_ASSIGN_OR_RETURN(const auto missing,
                                 catalogue::missingLooks(library, last, kLooksAtOnce));
        if (missing.empty()) return {};
        for (const auto& [contentId, id] : missing) {
            last = contentId;
            ++done;
            const auto record = catalogue::readTexture(library, id);
            // A damaged picture looks like nothing; the check tells of it.
            if (!record && record.error().kind == core::ErrorKind::Corrupt) continue;
            if (!record) return record.error();
            PANTILE_RETURN_IF_ERROR(noteLook(library, id, record->texture));
        }
        PANTILE_RETURN_IF_ERROR(transaction.commit());
    }
    return {};
}

Result<std::vector<LookAlike>> similarTo(Library& library, TextureId id, int within,
                                         const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkWithin(within));
    Original original(library, id);
    PANTILE_ASSIGN_OR_RETURN(const TextureRecord* const record, original.record());
    PANTILE_RETURN_IF_ERROR(workOutLooks(library, progress));
    const picture::Look look = lookOfTexture(record->texture);
    Found found;
    PANTILE_ASSIGN_OR_RETURN(const auto others, catalogue::texturesOfShape(library, look.shape));
    PANTILE_RETURN_IF_ERROR(addSameShape(original, others, found));
    if (within > 0) {
        PANTILE_ASSIGN_OR_RETURN(const auto table, LookTable::read(library, {&look, 1}, within));
        PANTILE_ASSIGN_OR_RETURN(const auto near,
                                 comparable(library, original, table.near(look, within)));
        PANTILE_RETURN_IF_ERROR(addNear(original, near, within, progress, found));
    }
    return likestFirst(found);
}

Result<std::vector<std::optional<LookAlike>>> cameFrom(const Library& library,
                                                       std::span<const TextureId> ids, int within,
                                                       const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkWithin(within));
    std::vector<std::optional<catalogue::LookFigures>> figures;
    std::vector<picture::Look> looks;
    for (const TextureId id : ids) {
        PANTILE_ASSIGN_OR_RETURN(const auto own, catalogue::readLook(library, id));
        figures.push_back(own);
        if (own) looks.push_back(lookOf(*own));
    }
    LookTable table;
    if (within > 0) {
        PANTILE_ASSIGN_OR_RETURN(table, LookTable::read(library, looks, within));
    }
    std::vector<std::optional<LookAlike>> found;
    for (std::size_t i = 0; i < ids.size(); ++i) {
        if (progress.stopRequested()) return core::stoppedError();
        found.emplace_back();
        if (!figures[i]) continue;
        PANTILE_ASSIGN_OR_RETURN(found.back(),
                                 likestBefore(library, ids[i], lookOf(*figures[i]), table, within));
    }
    return found;
}

Result<std::vector<std::vector<LookAlike>>> findDuplicates(Library& library, int within,
                                                           const core::Progress& progress) {
    PANTILE_RETURN_IF_ERROR(checkWithin(within));
    PANTILE_RETURN_IF_ERROR(workOutLooks(library, progress));
    return Grouping(library, within, progress).run();
}

}  // namespace pantile::tasks
