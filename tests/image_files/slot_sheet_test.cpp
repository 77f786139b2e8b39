#include "image_files/slot_sheet.h"

#include <gtest/gtest.h>

#include "support/matchers.h"

namespace pantile::image_files {
namespace {

using core::ErrorKind;
using tests::failsWith;

// What a page looks like is checked end to end, by the program that has fonts.

TEST(SlotSheet, NeedsASlot) {
    EXPECT_THAT(slotSheetPdf({}), failsWith(ErrorKind::InvalidInput, "no slot"));
}

TEST(SlotSheet, IsRefusedWithoutFonts) {
    SlotSheet sheet;
    sheet.slots.push_back({core::Pixels{{1, 1}, {core::Rgba8{}}}, "kelp", {}});
    EXPECT_THAT(slotSheetPdf(sheet), failsWith(ErrorKind::Internal, "no fonts"));
}

}  // namespace
}  // namespace pantile::image_files
