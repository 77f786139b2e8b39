#include "codec/parts.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "code_support.h"
#include "codec/armour.h"
#include "codec/checksum.h"
#include "codec/part_pool.h"
#include "slips.h"
#include "support/matchers.h"

namespace pantile::codec {
namespace {

using Bytes = std::vector<std::uint8_t>;
using Lines = std::vector<std::string>;
using core::ErrorKind;
using tests::failsWith;
using tests::isOk;
using tests::joined;
using tests::linesOf;

Bytes randomBytes(tests::Random& random, std::size_t size) {
    Bytes bytes(size);
    for (auto& byte : bytes) byte = static_cast<std::uint8_t>(random.next());
    return bytes;
}

Lines partsOf(const core::Texture& texture, std::size_t parts) {
    return *armouredParts(packTexture(texture).bytes, parts);
}

void expectHolds(const std::string& text, const core::Texture& texture) {
    const Harvest harvest = harvestCodes(text);
    ASSERT_EQ(harvest.found.size(), 1U) << text;
    EXPECT_EQ(harvest.found[0].texture, texture);
    EXPECT_TRUE(harvest.damaged.empty()) << harvest.damaged[0].reason;
}

TEST(Parts, AreCutAsEvenlyAsCanBe) {
    tests::Random random(301);
    for (const std::size_t size : {2U, 13U, 100U, 1000U}) {
        for (const std::size_t parts : {2U, 3U, 7U, 13U}) {
            if (parts > size) continue;
            const auto codes = armouredParts(randomBytes(random, size), parts);
            ASSERT_THAT(codes, isOk());
            ASSERT_EQ(codes->size(), parts);
            std::size_t longest = 0;
            for (const std::string& code : *codes) {
                EXPECT_TRUE(code.starts_with("0I3"));
                longest = std::max(longest, code.size());
            }
            EXPECT_EQ(longest, longestPart(size, parts));
        }
    }
}

TEST(Parts, AreWrittenAndReadAsTheFrozenVectorSays) {
    int vectors = 0;
    for (const tests::CodeVector& vector : tests::readCodeVectors()) {
        if (vector.parts.empty()) continue;
        ++vectors;
        const auto count = static_cast<std::size_t>(
                               std::count(vector.parts.begin(), vector.parts.end(), kEndMark)) /
                           2;
        EXPECT_EQ(joined(*armouredParts(vector.bytes, count), "\n"), vector.parts);
        expectHolds(vector.parts, vector.texture);
    }
    EXPECT_EQ(vectors, 1);
}

TEST(Parts, RefuseNumbersThatCannotBe) {
    const Bytes bytes(20);
    EXPECT_THAT(armouredParts(bytes, 0), failsWith(ErrorKind::InvalidInput, "into 0 parts"));
    EXPECT_THAT(armouredParts(bytes, 1), failsWith(ErrorKind::InvalidInput, "into 1 parts"));
    EXPECT_THAT(armouredParts(bytes, 21), failsWith(ErrorKind::InvalidInput, "into 21 parts"));
    EXPECT_THAT(armouredParts(Bytes(20000), kMaxParts + 1),
                failsWith(ErrorKind::InvalidInput, "8193 parts"));
    EXPECT_THAT(armouredParts(Bytes(kMaxArmouredBytes + 1), 4), failsWith(ErrorKind::TooLarge, ""));
}

// What the least limit of the command line, less the words around a code, asks for.
TEST(Parts, SufficeForTheLongestCode) {
    constexpr std::size_t kLettersForTheCode = 80;
    EXPECT_LE(longestPart(kMaxArmouredBytes, kMaxParts), kLettersForTheCode);
}

TEST(Parts, AreReadOnlyIfTheirHeadIsWhole) {
    const auto head = [](std::initializer_list<int> list) {
        Bytes bytes;
        for (const int byte : list) bytes.push_back(static_cast<std::uint8_t>(byte));
        return readPart(bytes);
    };
    const auto good = head({1, 2, 0xAB, 0xCD, 0xEF, 0x01, 9, 8});
    ASSERT_THAT(good, isOk());
    EXPECT_EQ(good->head.name(), "part 2 of 3");
    EXPECT_EQ(good->head.whole, 0xABCDEF01U);
    EXPECT_EQ(good->slice, (Bytes{9, 8}));
    EXPECT_THAT(head({3, 2, 1, 1, 1, 1, 9}), failsWith(ErrorKind::Corrupt, "malformed"));
    EXPECT_THAT(head({0, 0, 1, 1, 1, 1, 9}), failsWith(ErrorKind::Corrupt, "malformed"));
    EXPECT_THAT(head({0, 0x80, 0x40, 1, 1, 1, 1, 9}), failsWith(ErrorKind::Corrupt, "malformed"));
    EXPECT_THAT(head({0, 0x80, 0, 1, 1, 1, 1, 9}), failsWith(ErrorKind::Corrupt, "malformed"));
    EXPECT_THAT(head({0, 1, 1, 1, 1}), failsWith(ErrorKind::Corrupt, "malformed"));
    EXPECT_THAT(head({0, 1, 1, 1, 1, 1}), failsWith(ErrorKind::Corrupt, "part 1 of 2"));
    EXPECT_THAT(head({}), failsWith(ErrorKind::Corrupt, "malformed"));
}

TEST(Parts, AreNotJoinedIfTheyDoNotBelongTogether) {
    const Bytes container = {1, 2, 3, 4, 5};
    const PartHead head{1, 2, crc32Of(container)};
    EXPECT_THAT(joinParts(head, {{1, {1, 2, 3}}, {2, {4, 5}}}), isOk());
    EXPECT_THAT(joinParts(head, {{1, {1, 2}}, {2, {3, 4, 5}}}),
                failsWith(ErrorKind::Corrupt, "evenly"));
    EXPECT_THAT(joinParts(head, {{1, {1, 2, 3}}, {2, {4, 6}}}),
                failsWith(ErrorKind::Corrupt, "together they do not"));
    EXPECT_THAT(joinParts(head, {{1, Bytes(kMaxArmouredBytes)}, {2, {4}}}),
                failsWith(ErrorKind::TooLarge, ""));
}

TEST(Parts, ArriveInAnyOrderTwiceAndAmongOtherCodes) {
    const core::Texture texture = tests::usualTexture(31);
    const core::Texture other = tests::usualTexture(32);
    tests::Random random(302);
    for (std::size_t parts = 2; parts <= 9; ++parts) {
        Lines posts = partsOf(texture, parts);
        posts.push_back(
            posts[static_cast<std::size_t>(random.between(0, static_cast<int>(parts) - 1))]);
        for (std::size_t i = posts.size() - 1; i > 0; --i) {
            std::swap(posts[i],
                      posts[static_cast<std::size_t>(random.between(0, static_cast<int>(i)))]);
        }
        expectHolds(joined(posts, "\n\nIda: and the next\n> "), texture);
        posts.insert(posts.begin() + 1, tests::codeOf(other));
        const Harvest harvest = harvestCodes(joined(posts, "\n"));
        ASSERT_EQ(harvest.found.size(), 2U);
        EXPECT_EQ(harvest.found[0].texture, texture);
        EXPECT_EQ(harvest.found[0].textLine, 1U);
        EXPECT_EQ(harvest.found[1].texture, other);
        EXPECT_TRUE(harvest.damaged.empty());
    }
}

TEST(Parts, OfSeveralCodesAreKeptApart) {
    Lines posts;
    std::vector<core::Texture> textures;
    for (std::uint64_t seed = 41; seed < 46; ++seed) {
        textures.push_back(tests::usualTexture(seed));
        for (std::string& part : partsOf(textures.back(), 3)) posts.push_back(std::move(part));
    }
    // The same code once more, cut otherwise.
    const Lines others = partsOf(textures[0], 4);
    posts.insert(posts.end(), others.begin(), others.end() - 1);
    tests::Random random(303);
    for (std::size_t i = posts.size() - 1; i > 0; --i) {
        std::swap(posts[i],
                  posts[static_cast<std::size_t>(random.between(0, static_cast<int>(i)))]);
    }
    const Harvest harvest = harvestCodes(joined(posts, "\n\n"));
    EXPECT_EQ(harvest.found.size(), textures.size());
    ASSERT_EQ(harvest.damaged.size(), 1U);
    EXPECT_EQ(harvest.damaged[0].reason, "part 4 of 4 is missing; ask for it");
}

TEST(Parts, GiveATextureOnceThatCameWholeToo) {
    const core::Texture texture = tests::usualTexture(31);
    expectHolds(tests::codeOf(texture) + "\n" + joined(partsOf(texture, 3), "\n"), texture);
}

TEST(Parts, ThatAreMissingAreNamed) {
    const Lines posts = partsOf(tests::usualTexture(31), 9);
    const auto said = [&](const std::vector<std::size_t>& there) {
        Lines some;
        for (const std::size_t number : there) some.push_back(posts[number - 1]);
        const Harvest harvest = harvestCodes("Look:\n" + joined(some, "\n"));
        EXPECT_TRUE(harvest.found.empty());
        EXPECT_EQ(harvest.damaged.size(), 1U);
        return harvest.damaged.empty() ? DamagedCode{} : harvest.damaged[0];
    };
    EXPECT_EQ(said({1, 3, 4, 5, 6, 7, 8, 9}).reason, "part 2 of 9 is missing; ask for it");
    EXPECT_EQ(said({9, 1, 5, 6, 4}).reason,
              "parts 2 to 3 and 7 to 8 of 9 are missing; ask for them");
    EXPECT_EQ(said({5}).reason, "parts 1 to 4 and 6 to 9 of 9 are missing; ask for them");
    EXPECT_EQ(said({5}).where, "line 2 of the text, part 5 of 9");
}

TEST(Parts, WithASlipAreHealed) {
    const core::Texture texture = tests::usualTexture(31);
    const Lines posts = partsOf(texture, 3);
    tests::Random random(304);
    for (int i = 0; i < 300; ++i) {
        Lines damaged = posts;
        for (std::string& post : damaged) tests::slipAnywhere(random, post);
        expectHolds(joined(damaged, "\n\n"), texture);
    }
    Lines damaged = posts;
    damaged[1][40] = damaged[1][40] == 'q' ? 'g' : 'q';
    const Harvest harvest = harvestCodes(joined(damaged, "\n"));
    ASSERT_EQ(harvest.found.size(), 1U);
    EXPECT_EQ(harvest.found[0].repaired, 1);
    EXPECT_TRUE(harvest.found[0].repairs[0].starts_with("part 2 of 3, line 2, letter 7: q read as"))
        << harvest.found[0].repairs[0];
}

TEST(Parts, BeyondRepairAreNamedWithTheirLine) {
    Lines posts = partsOf(tests::noisyTexture(), 3);
    Lines lines = linesOf(posts[1]);
    ASSERT_GE(lines.size(), 3U);
    lines.erase(lines.begin() + 1);
    posts[1] = joined(lines, "\n");
    const Harvest harvest = harvestCodes(joined(posts, "\n\n"));
    EXPECT_TRUE(harvest.found.empty());
    ASSERT_EQ(harvest.damaged.size(), 1U);
    EXPECT_NE(harvest.damaged[0].where.find("line 2 of part 2 of 3"), std::string::npos)
        << harvest.damaged[0].where;
    EXPECT_EQ(harvest.damaged[0].reason,
              "line 2 of the code is missing; ask for line 2 of part 2 of 3 again");
}

TEST(Parts, ThatContradictOneAnotherGiveNothing) {
    Bytes bytes = {0, 1, 1, 2, 3, 4, 7, 7, 7};
    std::string text = *armoured(bytes, ArmourForm::Part) + "\n";
    bytes[0] = 1;
    text += *armoured(bytes, ArmourForm::Part);
    const Harvest harvest = harvestCodes(text);
    EXPECT_TRUE(harvest.found.empty());
    ASSERT_EQ(harvest.damaged.size(), 1U);
    EXPECT_NE(harvest.damaged[0].reason.find("together they do not"), std::string::npos);
}

TEST(Parts, OfTooManyCodesAreNotKept) {
    std::string text;
    for (std::size_t i = 0; i < PartPool::kMostCodes + 3; ++i) {
        text += *armoured(Bytes{0, 1, 9, 9, static_cast<std::uint8_t>(i >> 8U),
                                static_cast<std::uint8_t>(i), 5},
                          ArmourForm::Part) +
                "\n";
    }
    const Harvest harvest = harvestCodes(text);
    EXPECT_TRUE(harvest.found.empty());
    EXPECT_EQ(harvest.damaged.size(), PartPool::kMostCodes + 3);
    EXPECT_NE(harvest.damaged.back().reason.find("too many codes in parts"), std::string::npos);
}

}  // namespace
}  // namespace pantile::codec
