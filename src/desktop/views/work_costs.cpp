#include "desktop/views/work_costs.h"

#include <QLocale>
#include <QVBoxLayout>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/fact_line.h"
#include "desktop/views/picture_view.h"

namespace pantile::desktop {

namespace {

constexpr int kTilesSide = 216;

QString shownSeam(const picture::SeamDifference& seam) {
    return WorkCosts::tr("%1 × as visible as the inside")
        .arg(QLocale().toString(seam.ratio(), 'f', 1));
}

QString shownCount(std::int64_t number) {
    return QLocale().toString(qlonglong{number});
}

}  // namespace

WorkCosts::WorkCosts(AppContext& context, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_tiles(new PictureView(hatchOf(context.theme), this)),
      m_drawing(new FactLine("workDrawing", tr("Drawing"), this)),
      m_load(new FactLine("workLoad", tr("In a load"), this)),
      m_code(new FactLine("workCode", tr("As a code"), this)),
      m_sideSeam(new FactLine("sideSeam", tr("Side seam"), this)),
      m_topSeam(new FactLine("topSeam", tr("Top seam"), this)),
      m_working(context.jobs) {
    setObjectName(QStringLiteral("workCosts"));
    m_tiles->setObjectName(QStringLiteral("workTiles"));
    m_tiles->setAccessibleName(tr("The texture as 3 x 3 tiles"));
    m_tiles->setRepeat(Repeat::ThreeByThree);
    m_tiles->setMaximumWidth(kTilesSide);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    layout->setSpacing(kGap);
    layout->addWidget(m_tiles);
    for (FactLine* const line : {m_drawing, m_load, m_code, m_sideSeam, m_topSeam})
        layout->addWidget(line);
}

void WorkCosts::compareWith(const core::Texture& texture) {
    m_before.reset();
    m_texture = texture;
    m_tiles->setTexture(texture);
    work();
}

void WorkCosts::setTexture(const core::Texture& texture) {
    if (m_texture == texture) return;
    m_texture = texture;
    m_tiles->setTexture(texture);
    if (!m_working.isRunning()) work();
}

void WorkCosts::work() {
    m_worked = m_texture;
    m_working.start(
        [path = m_context.libraryPath, texture = *m_texture](const core::Progress& progress) {
            return workFigures(path, texture, progress);
        },
        [this](const core::Result<WorkFigures>& figures) {
            if (figures && !m_before) m_before = *figures;
            if (m_worked == m_texture) return showFigures(figures);
            work();
        });
}

void WorkCosts::showFigures(const core::Result<WorkFigures>& figures) {
    if (!figures) {
        m_drawing->setValue(shownError(figures.error()));
        for (FactLine* const line : {m_load, m_code, m_sideSeam, m_topSeam}) line->setValue({});
        return;
    }
    showEstimates(*figures);
    m_sideSeam->setValue(shownSeam(figures->seams.vertical));
    m_topSeam->setValue(shownSeam(figures->seams.horizontal));
}

void WorkCosts::showEstimates(const WorkFigures& figures) {
    const auto compared = [](const QString& now, const QString& before) {
        return now == before ? now : tr("%1 (was %2)").arg(now, before);
    };
    const auto shown = [](const std::optional<catalogue::Estimate>& estimate, auto&& words) {
        return estimate ? words(*estimate) : tr("not known: it fits no canvas");
    };
    const auto time = [](const catalogue::Estimate& e) { return shownDuration(e.drawMs); };
    const auto bytes = [](const catalogue::Estimate& e) { return shownBytes(e.loadBytes); };
    m_drawing->setValue(compared(shown(figures.estimate, time), shown(m_before->estimate, time)));
    m_load->setValue(compared(shown(figures.estimate, bytes), shown(m_before->estimate, bytes)));
    m_code->setValue(tr("%1 characters")
                         .arg(compared(shownCount(figures.codeCharacters),
                                       shownCount(m_before->codeCharacters))));
}

}  // namespace pantile::desktop
