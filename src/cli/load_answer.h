#pragma once

// Kept loads in answers: what lies in which slot, and what was written when.

#include <iosfwd>

#include <QJsonObject>

#include "catalogue/library.h"
#include "core/result.h"
#include "tasks/load_history.h"

namespace pantile::cli {

core::Result<QJsonObject> storedJson(const catalogue::Library& library,
                                     const catalogue::StoredLoad& load);

/// The load with a table of its slots and a line for each writing.
core::Result<void> printStored(std::ostream& out, const catalogue::Library& library,
                               const catalogue::StoredLoad& load);

QJsonObject writtenJson(const tasks::WrittenOnce& written);

void printWritten(std::ostream& out, const tasks::WrittenOnce& written);

}  // namespace pantile::cli
