#pragma once

#include <iosfwd>
#include <vector>

#include <QJsonArray>
#include <QJsonObject>

#include "cli/table.h"
#include "tasks/choose_for_board.h"
#include "tasks/split_over_loads.h"

namespace pantile::cli {

/// The slots of a choice, numbered from 1.
QJsonArray slotsJson(const tasks::Choice& choice);

/// All of a choice by the contract's names.
QJsonObject choiceJson(const tasks::Choice& choice);

/// The same for several loads.
QJsonObject splitJson(const tasks::Split& split);

Table slotTable(const tasks::Choice& choice);

/// A line for each reason for which textures were not chosen, with their ids and what would let
/// them in.
void printLeftOut(std::ostream& out, const std::vector<tasks::NotChosen>& leftOut);

/// What to know before the board that a load was written for is plugged in.
void printCautions(std::ostream& out);

}  // namespace pantile::cli
