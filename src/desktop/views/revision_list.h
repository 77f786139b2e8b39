#pragma once

#include <vector>

#include <QWidget>

#include "catalogue/history.h"

class QVBoxLayout;

namespace pantile::desktop {

/// What was changed when, newest first, each with the way back to what came before.
class RevisionList : public QWidget {
    Q_OBJECT

public:
    explicit RevisionList(QWidget* parent);

    void showRevisions(const std::vector<catalogue::Revision>& revisions);

Q_SIGNALS:
    /// Back to what was after this revision.
    void revertAsked(int revision);

private:
    void addLine(const catalogue::Revision& revision, bool isNewest);

    QVBoxLayout* m_lines;
};

}  // namespace pantile::desktop
