#pragma once

// Runs the command line in the test's own process, on a library in a folder of the test's own.

#include <sstream>
#include <string>
#include <vector>

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <gtest/gtest.h>

#include "cli/run_cli.h"
#include "support/temporary_folder.h"

namespace pantile::tests {

struct CliAnswer {
    int exitCode = 0;
    std::string out;
    std::string err;

    QJsonDocument document() const {
        const QJsonDocument parsed = QJsonDocument::fromJson(QByteArray::fromStdString(out));
        EXPECT_FALSE(parsed.isNull()) << "no JSON: " << out << err;
        return parsed;
    }

    QJsonObject json() const { return document().object(); }

    QJsonArray jsonList() const { return document().array(); }
};

class CliRunner {
public:
    std::string path(const std::string& name) const { return (m_folder.path() / name).string(); }

    std::string libraryPath() const { return path("library.db"); }

    CliAnswer run(std::vector<std::string> words, const std::string& input = {}) const {
        words.insert(words.begin(), {"--library", libraryPath()});
        return runBare(words, input);
    }

    CliAnswer runJson(std::vector<std::string> words, const std::string& input = {}) const {
        words.insert(words.begin(), "--json");
        return run(std::move(words), input);
    }

    /// Without naming the library.
    CliAnswer runBare(const std::vector<std::string>& words, const std::string& input = {}) const {
        std::istringstream in(input);
        std::ostringstream out;
        std::ostringstream err;
        const int exitCode = cli::runCli(words, {in, out, err}, {});
        return {exitCode, out.str(), err.str()};
    }

    /// Writes a small grid as CSV, one that `seed` tells apart from others, and gives its path.
    std::string writeGrid(const std::string& name, int seed, int side = 4) const;

    void writeText(const std::string& name, const std::string& text) const;
    std::string readText(const std::string& pathOfFile) const;

private:
    TemporaryFolder m_folder;
};

}  // namespace pantile::tests
