#pragma once

// JSON answers on standard output.

#include <iosfwd>

#include "core/error.h"
#include "tasks/json.h"

namespace pantile::cli {

using tasks::jsonArray;
using tasks::jsonHundredths;
using tasks::jsonNumber;
using tasks::jsonPaths;
using tasks::jsonSeconds;
using tasks::jsonText;
using tasks::jsonTexts;

QJsonObject jsonError(const core::Error& error);

/// One document on one line.
void printJson(std::ostream& out, const QJsonObject& object);
void printJsonList(std::ostream& out, const QJsonArray& array);

}  // namespace pantile::cli
