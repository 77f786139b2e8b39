#pragma once

#include <iosfwd>

#include <QJsonArray>
#include <QJsonObject>

#include "cli/table.h"
#include "tasks/choose_for_board.h"

namespace pantile::cli {

/// The slots of a choice, numbered from 1.
QJsonArray slotsJson(const tasks::Choice& choice);

/// All of a choice by the contract's names.
QJsonObject choiceJson(const tasks::Choice& choice);

Table slotTable(const tasks::Choice& choice);

/// A line for each reason for which textures were not chosen, with their ids.
void printLeftOut(std::ostream& out, const tasks::Choice& choice);

/// What to know before the board that a load was written for is plugged in.
void printCautions(std::ostream& out);

}  // namespace pantile::cli
