#pragma once

#include <optional>

#include <QWidget>

#include "desktop/app_context.h"
#include "desktop/jobs/background_job.h"
#include "desktop/jobs/edit_job.h"

namespace pantile::desktop {

class FactLine;
class PictureView;

/// The texture under work as tiles, what it costs as it is now and cost before, and its seams.
class WorkCosts : public QWidget {
    Q_OBJECT

public:
    /// The context must outlive it.
    WorkCosts(AppContext& context, QWidget* parent);

    /// The figures of `texture` are what those of the next ones are compared with.
    void compareWith(const core::Texture& texture);

    /// Works the figures out behind; while it does, only the latest texture waits for its turn.
    void setTexture(const core::Texture& texture);

    void stopAndWait() { m_working.stopAndWait(); }

private:
    void work();
    void showFigures(const core::Result<WorkFigures>& figures);
    void showEstimates(const WorkFigures& figures);

    AppContext& m_context;
    PictureView* m_tiles;
    FactLine* m_drawing;
    FactLine* m_load;
    FactLine* m_code;
    FactLine* m_sideSeam;
    FactLine* m_topSeam;
    std::optional<core::Texture> m_texture;
    std::optional<core::Texture> m_worked;  ///< Whose figures are shown or on their way.
    std::optional<WorkFigures> m_before;
    BackgroundJob<WorkFigures> m_working;
};

}  // namespace pantile::desktop
