#pragma once

// The operations on a texture as a whole, as a table: their names, what they ask for, and what
// becomes of the answers.

#include <functional>
#include <span>
#include <string>
#include <vector>

#include "tasks/touch_operations.h"

namespace pantile::desktop {

enum class AnswerKind {
    Number,
    Colour,   ///< An index of the palette.
    Choice,   ///< One of several words, counted from 0.
    Palette,  ///< A palette of the library, by name.
};

/// Something that an operation asks for.
struct Question {
    const char* words;  ///< Translated in the context "operations".
    AnswerKind kind = AnswerKind::Number;
    int least = 0;  ///< Numbers alone.
    int most = 0;
    int usual = 0;  ///< For a colour: 0 the one that is picked, 1 the other one.
    std::vector<const char*> choices;
};

struct Answers {
    std::vector<int> numbers;  ///< One for each question, 0 where it asks for a palette.
    std::string palette;
};

struct WholeOperation {
    const char* words;  ///< Translated in the context "operations".
    std::vector<Question> questions;
    std::function<tasks::TouchOperation(const Answers&)> make;
};

/// In the order in which they are offered.
std::span<const WholeOperation> wholeOperations();

}  // namespace pantile::desktop
