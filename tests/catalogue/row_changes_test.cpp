#include "catalogue/row_changes.h"

#include <limits>
#include <string>

#include <gtest/gtest.h>

#include "catalogue/recorded_tables.h"
#include "support/matchers.h"
#include "support/random.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

RowValue someValue(tests::Random& random, const std::string& text) {
    constexpr std::int64_t kEnds[] = {0,
                                      -1,
                                      1,
                                      63,
                                      64,
                                      std::numeric_limits<std::int64_t>::max(),
                                      std::numeric_limits<std::int64_t>::min()};
    switch (random.between(0, 4)) {
        case 0:
            return {};
        case 1:
            return kEnds[random.next() % std::size(kEnds)];
        case 2:
            return static_cast<std::int64_t>(random.next());
        case 3:
            return std::string_view(text);
        default: {
            const auto* const bytes =
                static_cast<const std::uint8_t*>(static_cast<const void*>(text.data()));
            return std::span(bytes, text.size());
        }
    }
}

RowChange someChange(tests::Random& random, const std::string& text) {
    RowChange change;
    change.kind = static_cast<RowChangeKind>(random.between(0, 2));
    change.table = random.next() % recordedTables().size();
    const RecordedTable& table = recordedTables()[change.table];
    const bool isDropped = change.kind == RowChangeKind::Dropped;
    for (std::size_t i = isDropped ? table.columns : table.keys; i > 0; --i) {
        change.values.push_back(someValue(random, text));
    }
    if (isDropped || table.columns == table.keys) return change;
    change.seal = random.next() >> 26U;
    if (change.kind == RowChangeKind::New) return change;
    for (int i = random.between(1, 3); i > 0; --i) {
        change.before.emplace_back(random.next() % table.columns, someValue(random, text));
    }
    return change;
}

TEST(RowChanges, ComeBackAsTheyWere) {
    tests::Random random(3);
    const std::string text =
        "Küste\0n"
        "ebel";
    std::string packed;
    std::vector<RowChange> changes;
    for (int i = 0; i < 500; ++i) {
        changes.push_back(someChange(random, text));
        packChange(packed, changes.back());
    }
    const auto unpacked = unpackChanges(packed);
    ASSERT_THAT(unpacked, isOk());
    ASSERT_EQ(unpacked->size(), changes.size());
    std::string again;
    for (const RowChange& change : *unpacked) packChange(again, change);
    EXPECT_EQ(again, packed);
    for (std::size_t i = 0; i < changes.size(); ++i) {
        EXPECT_EQ((*unpacked)[i].kind, changes[i].kind);
        EXPECT_EQ((*unpacked)[i].table, changes[i].table);
        EXPECT_EQ((*unpacked)[i].seal, changes[i].seal);
        EXPECT_EQ((*unpacked)[i].values.size(), changes[i].values.size());
        EXPECT_EQ((*unpacked)[i].before.size(), changes[i].before.size());
    }
}

/// The bytes are stored: by hand, from the header's words.
TEST(RowChanges, AreThoseBytes) {
    const std::size_t shelves = *recordedTableNamed("shelves");
    std::string packed;
    packChange(packed, {RowChangeKind::New, shelves, {std::int64_t{3}}, 200, {}});
    packChange(packed, {RowChangeKind::Changed, shelves, {std::int64_t{3}}, 1, {{1, "Pier"}}});
    packChange(packed, {RowChangeKind::Dropped, shelves, {std::int64_t{-1}, "P", {}}, 0, {}});
    EXPECT_EQ(packed, std::string("\x06\x19\xC8\x01"
                                  "\x46\x19\x01\x01\x01\x12Pier"
                                  "\x86\x03\x05\x06P\x00",
                                  20));
}

TEST(RowChanges, OfAnyOtherBytesAreRefusedOrRead) {
    tests::Random random(5);
    std::string packed;
    for (int i = 0; i < 20; ++i) packChange(packed, someChange(random, "kelp"));
    for (std::size_t length = 0; length < packed.size(); ++length) {
        (void)unpackChanges(std::string_view(packed).substr(0, length));
        std::string changed = packed;
        changed[length] = static_cast<char>(random.next());
        (void)unpackChanges(changed);
    }
    EXPECT_THAT(unpackChanges("\xC0"), failsWith(ErrorKind::Corrupt, "undo an action"));
    EXPECT_THAT(unpackChanges("\x3F\x01"), failsWith(ErrorKind::Corrupt, "undo an action"));
    EXPECT_THAT(unpackChanges("\x80\xFF\xFF\xFF\xFF\x0F"), failsWith(ErrorKind::Corrupt, "undo"));
    EXPECT_THAT(unpackChanges("\x06"), failsWith(ErrorKind::Corrupt, "undo an action"));
}

}  // namespace
}  // namespace pantile::catalogue
