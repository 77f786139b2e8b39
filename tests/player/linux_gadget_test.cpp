// The port for small Linux boards as a program of its own: a pipe stands for the mouse's device
// file, an ordinary file for the trigger's pin.

#include <chrono>
#include <csignal>
#include <fcntl.h>
#include <fstream>
#include <poll.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <gtest/gtest.h>

#include "board/load_writer.h"
#include "board/random_load.h"
#include "drawing/reports.h"
#include "player/bench_run.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"

namespace pantile::tests {
namespace {

constexpr core::PointerTiming kSwift = {1, 127, 8, 1, 1, 0};

board::Load smallSample() {
    return loadOf({sampleTexture("16/brass-key.png")}, kSwift, core::PenModel::WholeCells);
}

class Gadget {
public:
    explicit Gadget(const board::Load& load) {
        auto bytes = board::writeLoad(load, roomyBoard());
        EXPECT_THAT(bytes, isOk());
        if (!bytes) return;
        std::ofstream(place("load.bin"), std::ios::binary)
            .write(reinterpret_cast<const char*>(bytes->data()),
                   static_cast<std::streamsize>(bytes->size()));
        trigger('0');
        EXPECT_EQ(mkfifo(place("mouse").c_str(), 0600), 0);
        // Open for both, so that neither side waits for the other.
        m_pipe = open(place("mouse").c_str(), O_RDWR);
        m_child = fork();
        if (m_child != 0) return;
        const std::string program = PANTILE_LINUX_GADGET;
        execl(program.c_str(), program.c_str(), place("load.bin").c_str(), place("mouse").c_str(),
              place("pin").c_str(), static_cast<char*>(nullptr));
        _exit(127);
    }

    ~Gadget() {
        if (m_child > 0) end();
        close(m_pipe);
    }

    Gadget(const Gadget&) = delete;
    Gadget& operator=(const Gadget&) = delete;
    Gadget(Gadget&&) = delete;
    Gadget& operator=(Gadget&&) = delete;

    /// In place and in one write, as a kernel's file changes.
    void trigger(char state) {
        const int pin = open(place("pin").c_str(), O_WRONLY | O_CREAT, 0600);
        EXPECT_EQ(pwrite(pin, &state, 1, 0), 1);
        close(pin);
    }

    /// Takes reports until there are `wanted` of them or none came for `quietMs`.
    void read(std::size_t wanted, int quietMs) {
        pollfd waiting{m_pipe, POLLIN, 0};
        while (m_reports.size() < wanted && poll(&waiting, 1, quietMs) > 0) {
            std::uint8_t bytes[3] = {};
            if (::read(m_pipe, bytes, sizeof bytes) != 3) break;
            m_reports.push_back({static_cast<std::int64_t>(m_reports.size()), bytes[0],
                                 static_cast<std::int8_t>(bytes[1]),
                                 static_cast<std::int8_t>(bytes[2])});
        }
    }

    /// Presses until the first report comes. On a busy machine the program may look at its trigger
    /// so seldom that it is not armed yet: then the trigger is released and pressed again.
    void startDrawing() {
        for (int tries = 0; tries < 10 && m_reports.empty(); ++tries) {
            read(1, 800);
            ASSERT_TRUE(m_reports.empty()) << "it began by itself";
            trigger('1');
            read(1, 2000);
            if (m_reports.empty()) trigger('0');
        }
        ASSERT_FALSE(m_reports.empty()) << "no press began the drawing";
    }

    /// Asks the program to end. Returns its exit status.
    int end() {
        kill(m_child, SIGTERM);
        int status = 0;
        waitpid(std::exchange(m_child, 0), &status, 0);
        return status;
    }

    const std::vector<SeenReport>& reports() const { return m_reports; }

private:
    std::string place(const std::string& name) const { return (m_folder.path() / name).string(); }

    TemporaryFolder m_folder;
    int m_pipe = -1;
    pid_t m_child = 0;
    std::vector<SeenReport> m_reports;
};

TEST(LinuxGadget, DrawsTheSampleAfterALongPress) {
    const board::Load load = smallSample();
    const board::LoadSlot& slot = load.slots[0];
    Gadget gadget(load);
    const auto before = std::chrono::steady_clock::now();
    gadget.startDrawing();
    gadget.trigger('0');
    const std::size_t all = static_cast<std::size_t>(movingInReports(slot, kSwift)) +
                            drawing::reportsOf(slot.plan, slot.canvas, kSwift).size();
    gadget.read(all, 5000);
    const std::chrono::duration<double, std::milli> took =
        std::chrono::steady_clock::now() - before;
    ASSERT_EQ(gadget.reports().size(), all);
    EXPECT_GE(took.count(), static_cast<double>(slot.plan.milliseconds + SLOT_CHOICE_LONG_MS - 50));
    EXPECT_EQ(gadget.end(), 0);

    // A pipe tells no times; the other instruction sets are held to them.
    ScreenSetup setup = screenFor(slot, kSwift);
    setup.leastPressMs = setup.leastReleaseMs = setup.leastSettleMs = setup.leastGapMs = 0;
    VirtualScreen screen(setup, 1000, 20);
    for (const SeenReport& report : gadget.reports()) screen.take(report);
    screen.wait(1'000'000);
    EXPECT_EQ(whatIsWrong(screen, slot), "");
}

TEST(LinuxGadget, LetsTheButtonGoWhenItIsEnded) {
    Gadget gadget(smallSample());
    gadget.startDrawing();
    ASSERT_FALSE(gadget.reports().empty());
    while (gadget.reports().back().buttons == 0) {
        const std::size_t before = gadget.reports().size();
        gadget.read(before + 1, 5000);
        ASSERT_GT(gadget.reports().size(), before) << "nothing was drawn";
    }
    EXPECT_EQ(gadget.end(), 0);
    gadget.read(100'000, 10);
    EXPECT_EQ(gadget.reports().back().buttons, 0);
}

TEST(LinuxGadget, SaysWhatIsMissing) {
    const TemporaryFolder folder;
    const std::string gadget = PANTILE_LINUX_GADGET;
    EXPECT_NE(std::system((gadget + " 2>/dev/null").c_str()), 0);
    EXPECT_NE(std::system((gadget + " " + folder.path().string() + "/none /dev/null /dev/null" +
                           " 2>/dev/null")
                              .c_str()),
              0);
}

}  // namespace
}  // namespace pantile::tests
