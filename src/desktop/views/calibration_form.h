#pragma once

#include <optional>
#include <vector>

#include <QWidget>

#include "board/calibration.h"
#include "core/canvas.h"
#include "desktop/app_context.h"
#include "desktop/jobs/background_job.h"
#include "desktop/jobs/calibrate_job.h"

class QBoxLayout;
class QComboBox;
class QGridLayout;
class QLineEdit;
class QPushButton;
class QSpinBox;

namespace pantile::desktop {

class CalibrationPicture;
class Mark;
class PlainLabel;
class TickBox;

/// Leads through the calibration of a canvas: its load is written and drawn, what came of it is
/// read off the toolkit's screen, and the pitch and origin that explain it are taken.
class CalibrationForm : public QWidget {
    Q_OBJECT

public:
    /// The context must outlive it.
    CalibrationForm(AppContext& context, QWidget* parent);

    /// Chooses a canvas and a board by name, where the library has them; an empty name leaves the
    /// choice as it is.
    void choose(const QString& canvas, const QString& board);

    /// The library has changed: canvases and boards are read anew.
    void renew();

    /// For closing: what is being written stops, what is being taken is taken.
    void finishAll();

Q_SIGNALS:
    /// The library has the canvas with another pitch and origin now; drawing times hang on them.
    void taken(const QString& words);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Place {
        QSpinBox* column = nullptr;
        QSpinBox* row = nullptr;
    };

    QWidget* makeWriting();
    QWidget* makeReading();
    QWidget* makeTaking();
    QWidget* makeCautions(QWidget* parent);
    QSpinBox* makeNumber(const char* name, const QString& label, const QString& unread);
    void addPlace(QGridLayout& grid, const QString& words, QSpinBox* column, QSpinBox* row);
    const core::Canvas* canvas() const;
    void showCanvas();
    void forgetReading();
    std::optional<board::CalibrationReading> reading() const;
    void showReading();
    void showFound(const core::Result<board::Calibrated>& found,
                   const board::CalibrationReading& read);
    void write();
    void showWritten(const core::Result<tasks::WrittenLoad>& written);
    void take();
    void showTaken(const core::Result<tasks::CalibratedCanvas>& result);
    void showBusy();

    AppContext& m_context;
    QBoxLayout* m_parts;
    std::vector<core::Canvas> m_canvases;
    QComboBox* m_canvas;
    QComboBox* m_board;
    QLineEdit* m_folder;
    TickBox* m_replace;
    QPushButton* m_write;
    Mark* m_writtenMark;
    PlainLabel* m_written;
    Place m_near;
    Place m_far;
    QSpinBox* m_pairColumn;
    QSpinBox* m_pairRow;
    CalibrationPicture* m_picture;
    PlainLabel* m_pictureWords;
    Mark* m_foundMark;
    PlainLabel* m_found;
    QPushButton* m_take;
    BackgroundJob<tasks::WrittenLoad> m_writing;
    BackgroundJob<tasks::CalibratedCanvas> m_taking;
};

}  // namespace pantile::desktop
