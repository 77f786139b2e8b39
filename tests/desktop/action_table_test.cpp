#include "desktop/action_table.h"

#include <map>
#include <set>

#include <QAction>
#include <QObject>

#include <gtest/gtest.h>

namespace pantile::desktop {
namespace {

TEST(ActionTable, HasAKeyForEveryActionAndNoneTwice) {
    // One key may mean two things only where neither place hears the other's.
    std::map<QString, Heard> seen;
    for (const ActionRow& row : actionTable()) {
        EXPECT_FALSE(row.keys.isEmpty()) << row.name;
        for (const QKeySequence& keys : row.keys) {
            const auto before = seen.try_emplace(keys.toString(), row.heard);
            const Heard other = before.first->second;
            const bool apart = other != row.heard && other != Heard::InTheWindow &&
                               row.heard != Heard::InTheWindow;
            EXPECT_TRUE(before.second || apart) << row.name << " " << keys.toString().toStdString();
        }
    }
}

TEST(ActionTable, MakesAnActionForEveryRow) {
    QObject parent;
    const Actions actions(&parent);
    std::set<ActionId> ids;
    for (const ActionRow& row : actionTable()) {
        EXPECT_TRUE(ids.insert(row.id).second) << row.name << " stands twice";
        EXPECT_EQ(actions[row.id].shortcuts(), row.keys);
        EXPECT_EQ(actions[row.id].isEnabled(), row.needs == Needs::Nothing) << row.name;
    }
}

TEST(ActionTable, EnablesWhatNeedsASelection) {
    QObject parent;
    Actions actions(&parent);
    actions.setHasSelection(true);
    EXPECT_TRUE(actions[ActionId::CopyCode].isEnabled());
    actions.setHasSelection(false);
    EXPECT_FALSE(actions[ActionId::CopyCode].isEnabled());
    EXPECT_TRUE(actions[ActionId::AddPictures].isEnabled());
}

}  // namespace
}  // namespace pantile::desktop
