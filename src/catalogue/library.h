#pragma once

// Library: the SQLite file that holds everything. The functions that read and change it stand in
// reader.h, writer.h, edit.h, history.h, shelves.h, palettes.h, canvases.h, boards.h and loads.h.
//
// Durability: write-ahead log with synchronous=FULL, so a change that was acknowledged is still
// there after a crash of the program, and after a power cut if the disk keeps its promises.

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>

#include "catalogue/connection.h"
#include "catalogue/text_folding.h"
#include "catalogue/transaction.h"
#include "core/result.h"

namespace pantile::catalogue {

struct OpenOptions {
    enum class Create { IfMissing, Never };
    enum class Access {
        ReadWrite,
        ReadOnly,
        WhatTheFileAllows,  ///< ReadWrite, or ReadOnly where the file or its folder forbids it.
    };

    Create create = Create::IfMissing;
    Access access = Access::ReadWrite;
    std::chrono::milliseconds busyTimeout{5000};
    std::function<std::int64_t()> now;  ///< Unix seconds; the system's clock if empty.
    TextFolding folding;                ///< How searched text is folded; it must not be empty.
};

/// Threads: one Library for each thread; any number of them, in any number of programs, may have
/// the same file open. Reading never waits; writing waits for other writers up to the busy timeout.
class Library {
public:
    /// A new library, and its folder, is made where none was, complete or not at all. An older one
    /// is brought up to date, with a copy beside it first. One whose words another folding folded
    /// is folded anew; where it may only be read, it is searched as it is. Errors, each leaving the
    /// file as it was: NotFound if it is missing and may not be made; InvalidInput if the file is
    /// no SQLite database or no Pantile library; Unsupported if a newer program made it; Busy;
    /// Corrupt; Io if it is read-only, the disk is full or fails.
    static core::Result<Library> open(const std::filesystem::path& path,
                                      const OpenOptions& options = {});

    bool wasCreated() const { return m_wasCreated; }

    bool isReadOnly() const { return m_isReadOnly; }

    const std::filesystem::path& path() const { return m_connection->path(); }

    /// Many changes as one: they are kept when it commits. Errors: as Transaction::begin.
    core::Result<Transaction> begin() { return Transaction::begin(*m_connection); }

    /// A number that changes when another connection changes the library.
    core::Result<std::int64_t> dataVersion() const;

    /// Unix seconds by the clock of the options.
    std::int64_t now() const { return m_now(); }

    const TextFolding& folding() const { return m_folding; }

    /// For the files of catalogue alone.
    Connection& connection() const { return *m_connection; }

private:
    Library() = default;

    static core::Result<Library> openReadWrite(const std::filesystem::path& path,
                                               const OpenOptions& options);
    static core::Result<Library> openReadOnly(const std::filesystem::path& path,
                                              const OpenOptions& options);

    std::unique_ptr<Connection> m_connection;
    std::function<std::int64_t()> m_now;
    TextFolding m_folding;
    bool m_wasCreated = false;
    bool m_isReadOnly = false;
};

}  // namespace pantile::catalogue
