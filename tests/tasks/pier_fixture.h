#pragma once

// A library with five small textures and a board, "pier", whose three slots do not take them all.

#include <vector>

#include "catalogue/boards.h"
#include "tasks/choose_for_board.h"
#include "tasks/library_fixture.h"

namespace pantile::tests {

class PierFixture : public LibraryFixture {
protected:
    PierFixture() {
        core::Board board;
        board.name = "pier";
        board.slots = 3;
        board.bytes = 4000;
        EXPECT_THAT(catalogue::addBoard(m_library, board), isOk());
        for (int seed = 1; seed <= 5; ++seed) m_ids.push_back(add(texture(seed)));
        m_options.board = "pier";
    }

    std::vector<core::TextureId> m_ids;
    tasks::ChooseOptions m_options;
};

}  // namespace pantile::tests
