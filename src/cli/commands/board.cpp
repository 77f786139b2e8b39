#include <ostream>

#include "catalogue/boards.h"
#include "cli/commands/all.h"
#include "cli/commands/profiles.h"
#include "cli/json.h"
#include "cli/texture_answer.h"
#include "core/text.h"

namespace pantile::cli {

using core::Board;
using core::BoardMemory;
using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

constexpr std::array<Choice<BoardMemory>, 2> kMemories = {{
    {"flash", BoardMemory::Flash},
    {"card", BoardMemory::Card},
}};

std::string_view memoryWord(BoardMemory memory) {
    return memory == BoardMemory::Flash ? "flash" : "card";
}

QJsonObject boardJson(const Board& board) {
    const core::PointerTiming& t = board.timing;
    return {{"name", jsonText(board.name)},
            {"description", jsonText(board.description)},
            {"memory", jsonText(memoryWord(board.memory))},
            {"slots", board.slots},
            {"bytes", jsonNumber(board.bytes)},
            {"report_ms", t.reportIntervalMs},
            {"step_up", t.maxStepUp},
            {"step_down", t.maxStepDown},
            {"press_ms", t.pressMs},
            {"release_ms", t.releaseMs},
            {"settle_ms", t.settleMs},
            {"display", board.hasDisplay()
                            ? QJsonValue(QJsonArray{board.display.width, board.display.height})
                            : QJsonValue()}};
}

Outcome answerBoards(Session& session, const std::vector<Board>& boards) {
    if (session.json) {
        printJsonList(session.out, jsonArray(boards, boardJson));
        return Outcome::Done;
    }
    Table table({{"board"},
                 {"memory"},
                 {"slots", Align::Right},
                 {"bytes", Align::Right},
                 {"report", Align::Right},
                 {"press", Align::Right},
                 {"release", Align::Right},
                 {"settle", Align::Right}});
    const auto ms = [](int number) { return std::to_string(number) + " ms"; };
    for (const Board& board : boards) {
        const core::PointerTiming& t = board.timing;
        table.addRow({board.name, std::string(memoryWord(board.memory)),
                      std::to_string(board.slots), std::to_string(board.bytes),
                      ms(t.reportIntervalMs), ms(t.pressMs), ms(t.releaseMs), ms(t.settleMs)});
    }
    table.print(session.out);
    if (boards.size() == 1 && !boards.front().description.empty()) {
        session.out << core::visibleText(boards.front().description) << '\n';
    }
    return Outcome::Done;
}

Result<void> readTiming(const Arguments& arguments, core::PointerTiming& timing) {
    const std::array<Choice<core::PointerTiming>, 2> timings = {{
        {"careful", core::PointerTiming::careful()},
        {"quick", core::PointerTiming::quick()},
    }};
    if (const auto word = arguments.value("--timing")) {
        PANTILE_ASSIGN_OR_RETURN(timing, parseChoice("--timing", *word, timings));
    }
    PANTILE_RETURN_IF_ERROR(arguments.readNumber("--report-ms", 1, 1000, timing.reportIntervalMs));
    PANTILE_RETURN_IF_ERROR(arguments.readNumber("--step-up", 1, 127, timing.maxStepUp));
    PANTILE_RETURN_IF_ERROR(arguments.readNumber("--step-down", 1, 127, timing.maxStepDown));
    PANTILE_RETURN_IF_ERROR(arguments.readNumber("--press-ms", 1, 1000, timing.pressMs));
    PANTILE_RETURN_IF_ERROR(arguments.readNumber("--release-ms", 1, 1000, timing.releaseMs));
    return arguments.readNumber("--settle-ms", 0, 5000, timing.settleMs);
}

Result<void> readDisplay(const Arguments& arguments, core::Size& display) {
    const auto text = arguments.value("--display");
    if (!text) return {};
    if (*text == "none") {
        display = {};
        return {};
    }
    const std::size_t cross = text->find('x');
    if (cross == std::string::npos) {
        return Error{ErrorKind::Usage, "--display needs a width and a height, or none",
                     "write for example 64x48"};
    }
    PANTILE_ASSIGN_OR_RETURN(
        const auto width,
        parseNumber("the display's width", text->substr(0, cross), 1, core::kMaxDisplaySide));
    PANTILE_ASSIGN_OR_RETURN(
        const auto height,
        parseNumber("the display's height", text->substr(cross + 1), 1, core::kMaxDisplaySide));
    display = {static_cast<int>(width), static_cast<int>(height)};
    return {};
}

Result<void> readBoard(const Arguments& arguments, const catalogue::Library&, Board& board) {
    PANTILE_RETURN_IF_ERROR(arguments.readNumber("--slots", 1, core::kMaxBoardSlots, board.slots));
    PANTILE_ASSIGN_OR_RETURN(const auto bytes,
                             arguments.number("--bytes", 64, core::kMaxBoardBytes));
    board.bytes = bytes.value_or(board.bytes);
    if (const auto memory = arguments.value("--memory")) {
        PANTILE_ASSIGN_OR_RETURN(board.memory, parseChoice("--memory", *memory, kMemories));
    }
    PANTILE_RETURN_IF_ERROR(readDisplay(arguments, board.display));
    board.description = arguments.value("--description").value_or(board.description);
    return readTiming(arguments, board.timing);
}

Result<Board> startBoard(const Arguments& arguments, const std::string& name) {
    if (!arguments.has("--slots") || !arguments.has("--bytes")) {
        return Error{ErrorKind::Usage, "the board needs slots and bytes",
                     "write board add NAME --slots N --bytes B"};
    }
    Board board;
    board.name = name;
    return board;
}

Result<Outcome> runBoard(Session& session, const Arguments& arguments) {
    constexpr ProfileVerbs<Board> kVerbs = {
        "board",         catalogue::listBoards, catalogue::readBoard, tasks::addBoard,
        tasks::setBoard, tasks::removeBoard,    startBoard,           readBoard,
        answerBoards,
    };
    return runProfiles(session, arguments, kVerbs);
}

}  // namespace

Command boardCommand() {
    return {
        "board",
        "Describes drawing boards: slots, bytes, memory and timing.",
        {"list", "show NAME", "add NAME --slots N --bytes B [options]", "set NAME [options]",
         "remove NAME"},
        {
            {"--slots", OptionKind::Value, "N", "textures that a load holds, 1 to 255"},
            {"--bytes", OptionKind::Value, "B", "bytes that a whole load may take"},
            {"--memory", OptionKind::Value, "flash|card",
             "part of the program, or files on a card"},
            {"--description", OptionKind::Text, "TEXT",
             "its class, and where its figures come from"},
            {"--display", OptionKind::Value, "WxH|none",
             "its own screen for a small picture of each slot, up to 128x128; costs bytes of the "
             "load"},
            {"--timing", OptionKind::Value, "careful|quick", "a set of times to start from"},
            {"--report-ms", OptionKind::Value, "N", "time between two pointer reports"},
            {"--step-up", OptionKind::Value, "N", "largest move of a report, pen up, in counts"},
            {"--step-down", OptionKind::Value, "N", "the same with the pen down"},
            {"--press-ms", OptionKind::Value, "N", "hold after pressing"},
            {"--release-ms", OptionKind::Value, "N", "hold after releasing"},
            {"--settle-ms", OptionKind::Value, "N", "wait after a colour was picked"},
        },
        "",
        runBoard};
}

}  // namespace pantile::cli
