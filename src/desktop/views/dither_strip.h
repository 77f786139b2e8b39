#pragma once

#include <vector>

#include <QScrollArea>

#include "desktop/jobs/convert_job.h"
#include "desktop/theme/theme.h"
#include "desktop/views/cell_picture.h"

class QButtonGroup;
class QToolButton;

namespace pantile::desktop {

/// The same picture under each dither, with what it would cost, to pick from.
class DitherStrip : public QScrollArea {
    Q_OBJECT

public:
    /// The theme must outlive it.
    DitherStrip(const Theme& theme, QWidget* parent);

    picture::Dither dither() const;

    /// Samples without a texture leave what was shown before.
    void showSamples(const std::vector<DitherSample>& samples);

Q_SIGNALS:
    void picked();

private:
    QButtonGroup* m_group;
    std::vector<QToolButton*> m_buttons;
    Hatch m_hatch;
};

}  // namespace pantile::desktop
