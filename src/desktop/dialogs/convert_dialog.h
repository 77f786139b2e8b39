#pragma once

#include <memory>

#include <QDialog>

#include "desktop/jobs/background_job.h"
#include "desktop/jobs/convert_job.h"
#include "desktop/jobs/look_job.h"
#include "desktop/theme/theme.h"

class QLabel;
class QPushButton;
class QThreadPool;

namespace pantile::desktop {

class ConvertForm;
class DitherStrip;
class FactLine;
class PictureView;
class PlainLabel;
class SourceView;
class SwatchStrip;

/// Asks how pictures shall become textures, and shows at once what comes of it. It adds nothing;
/// once accepted, `options()` says how to.
class ConvertDialog : public QDialog {
    Q_OBJECT

public:
    /// `look` must have pictures. Pool and theme must outlive it.
    ConvertDialog(RequestLook look, QThreadPool& pool, const Theme& theme, QWidget* parent);
    ~ConvertDialog() override;

    const tasks::GatherOptions& options() const { return m_options; }

    /// Whether what is shown is what will be added.
    bool isExact() const { return m_isExact; }

Q_SIGNALS:
    /// For tests and benches: a preview came.
    void previewed();

private:
    QWidget* makeWork(const Theme& theme);
    QWidget* makeWalk();
    void setFact(const char* name, const QString& value);
    void showPicture(int index);
    void showSource(const core::Result<SourcePicture>& source);
    void readForm();
    void dropRun();
    void preview();
    void previewExactly();
    void show(const core::Result<tasks::RecognisedTexture>& made);
    void workOutCosts(const tasks::RecognisedTexture& made);
    void showCosts(const core::Result<PreviewCosts>& costs);
    void sampleDithers(SampleWork work);
    void refuse(const core::Error& error);

    const RequestLook m_look;
    int m_index = 0;
    std::shared_ptr<const SourcePicture> m_source;  ///< Owned too by the jobs that work on it.
    tasks::GatherOptions m_options;
    int m_run = 0;  ///< Rises with each preview; what an older one still says counts no more.
    bool m_isExact = false;
    bool m_wasEnlarged = false;  ///< The coarse picture would lead astray.

    SourceView* m_sourceView;
    PictureView* m_result;
    SwatchStrip* m_swatches;
    DitherStrip* m_dithers;
    ConvertForm* m_form;
    PlainLabel* m_state;
    QLabel* m_place = nullptr;
    QPushButton* m_before = nullptr;
    QPushButton* m_next = nullptr;
    QPushButton* m_add;

    BackgroundJob<SourcePicture> m_reading;
    BackgroundJob<tasks::RecognisedTexture> m_coarse;
    BackgroundJob<tasks::RecognisedTexture> m_exact;
    BackgroundJob<PreviewCosts> m_costs;
    BackgroundJob<std::vector<DitherSample>> m_sampling;
};

}  // namespace pantile::desktop
