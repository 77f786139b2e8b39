#include "tasks/seam_report.h"

#include "tasks/library_fixture.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

class SeamReport : public tests::LibraryFixture {};

TEST_F(SeamReport, GivesTheNumbersAndLeavesTheLibraryAlone) {
    core::Texture plain = *core::Texture::create(*core::Grid::filled(4, 3, 1), texture(1).palette(),
                                                 core::TextureText());
    const core::TextureId id = add(plain);
    const auto check = reportSeams(m_library, id, std::nullopt);
    ASSERT_THAT(check, isOk());
    EXPECT_EQ(check->vertical.ratio(), 1);
    EXPECT_EQ(check->horizontal.ratio(), 1);
    EXPECT_EQ(catalogue::readTexture(m_library, id)->row.revision, 1);
    EXPECT_THAT(reportSeams(m_library, core::TextureId{999}, std::nullopt),
                failsWith(ErrorKind::NotFound, "999"));
}

TEST_F(SeamReport, WritesThePictureAndNeverReplacesSilently) {
    const core::TextureId id = add(texture(1));
    SeamPictureFile file{path("seams.png"), 3, IfExists::Refuse};
    ASSERT_THAT(reportSeams(m_library, id, file), isOk());
    const auto png = readFile(file.path, 100000);
    ASSERT_THAT(png, isOk());
    EXPECT_EQ(png->substr(1, 3), "PNG");
    // The header's width and height: (8 + 2) cells of 3 pixels.
    EXPECT_EQ(png->substr(16, 8), std::string("\0\0\0\x1e\0\0\0\x1e", 8));
    EXPECT_THAT(reportSeams(m_library, id, file), failsWith(ErrorKind::AlreadyExists, "seams.png"));
    file.ifExists = IfExists::Replace;
    file.enlarge = 1;
    ASSERT_THAT(reportSeams(m_library, id, file), isOk());
    EXPECT_NE(*readFile(file.path, 100000), *png);
    file.enlarge = 65;
    EXPECT_THAT(reportSeams(m_library, id, file), failsWith(ErrorKind::InvalidInput, "64"));
}

}  // namespace
}  // namespace pantile::tasks
