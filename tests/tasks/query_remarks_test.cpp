#include "tasks/query_remarks.h"

#include "catalogue/edit.h"
#include "catalogue/tags.h"
#include "tasks/library_fixture.h"

namespace pantile::tasks {
namespace {

using tests::isOk;
using Remarks = std::vector<std::string>;

class QueryRemarks : public tests::LibraryFixture {
protected:
    QueryRemarks() {
        const core::TextureId id = add(texture(1));
        EXPECT_THAT(catalogue::changeTags(m_library, {{id}}, {{"few", "stone/slate"}}, {}), isOk());
        EXPECT_THAT(catalogue::addTagAlias(m_library, "boulder", "stone/slate"), isOk());
    }

    Remarks remarks(std::string_view query) { return queryRemarks(m_library, query); }
};

TEST_F(QueryRemarks, NameUnknownTagsWithTheNearest) {
    EXPECT_EQ(remarks("tag:fwe"), (Remarks{"there is no tag 'fwe'; did you mean 'few'?"}));
    EXPECT_EQ(remarks("-tag:bouldr"),
              (Remarks{"there is no tag 'bouldr'; did you mean 'boulder'?"}));
    EXPECT_EQ(remarks("tag:quite-other | tag:fwe"),
              (Remarks{"there is no tag 'quite-other'; 'pantile tags list' shows those there are",
                       "there is no tag 'fwe'; did you mean 'few'?"}));
    for (const char* fine : {"tag:FEW", "tag:stone", "tag:boulder", "tag:\"\"", "fwe", "title:fwe"})
        EXPECT_EQ(remarks(fine), Remarks{}) << fine;
}

TEST_F(QueryRemarks, ExplainTheSignsOfOtherLanguages) {
    EXPECT_EQ(remarks("tag:few OR sand"),
              (Remarks{"'OR' is searched for as text; write | between the two"}));
    EXPECT_EQ(
        remarks("NOT tag:few"),
        (Remarks{"'NOT' is searched for as text; write - right before what is not to match"}));
    EXPECT_EQ(remarks("kelp AND rope AND net"),
              (Remarks{"'AND' is searched for as text; leave it out: what stands side by side must "
                       "all match"}));
    EXPECT_EQ(remarks("!tag:few"),
              (Remarks{"'!tag:few' is searched for as text; write - in place of the !"}));
    EXPECT_EQ(remarks("title:def*"), (Remarks{"'def*' is searched for with its *; leave it out: "
                                              "parts of words are found"}));
    EXPECT_EQ(remarks("tag:fe*"), (Remarks{"'fe*' is searched for with its *; 'pantile tags list "
                                           "BEGINNING' shows what tags begin so"}));
    for (const char* fine : {"\"OR\"", "or", "Orchid", "title:\"a*\"", "(", "kelp -rope | net"})
        EXPECT_EQ(remarks(fine), Remarks{}) << fine;
}

}  // namespace
}  // namespace pantile::tasks
