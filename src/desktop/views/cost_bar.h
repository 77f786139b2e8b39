#pragma once

#include <cstdint>
#include <vector>

#include <QWidget>

#include "desktop/theme/theme.h"

namespace pantile::desktop {

/// A thin bar of what the slots of a load take together, one piece each, against a limit. What is
/// past the limit is told by a colour, a thicker piece and a mark at the limit.
class CostBar : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    CostBar(const Theme& theme, QWidget* parent);

    /// `words` say the same. Without a limit (0) the pieces share the whole bar.
    void setCosts(std::vector<std::int64_t> pieces, std::int64_t limit, const QString& words);

    bool isOver() const { return m_limit > 0 && total() > m_limit; }

    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    std::int64_t total() const;

    const Theme& m_theme;
    std::vector<std::int64_t> m_pieces;
    std::int64_t m_limit = 0;
};

}  // namespace pantile::desktop
