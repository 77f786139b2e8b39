#pragma once

#include <chrono>

#include <QElapsedTimer>
#include <QTimer>
#include <QWidget>

#include "desktop/app_context.h"
#include "desktop/jobs/background_job.h"
#include "desktop/jobs/film_job.h"

class QComboBox;
class QLabel;
class QPushButton;
class QSlider;

namespace pantile::desktop {

class DrawingScreen;
class PlainLabel;
class TickBox;

/// Plays the drawing of one texture on a virtual screen, beside the plain row-by-row way, both on
/// one clock.
class DrawingBench : public QWidget {
    Q_OBJECT

public:
    /// The context must outlive it.
    DrawingBench(AppContext& context, QWidget* parent);

    /// Plans and shows the drawing, unless it is the one that is shown.
    /// `canvas`: empty for what the texture is usually drawn on.
    void showTexture(core::TextureId id, const QString& title, const std::string& board,
                     const std::string& canvas);

    /// With words in place of a drawing.
    void showWords(const QString& words);

    /// The texture, its canvas or its board may be others by now.
    void renew();

    void stopAndWait();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    QWidget* makeScreens();
    QWidget* makeButtons();
    QPushButton* makeButton(const char* name, const QString& words, const QString& tip);
    void connectParts();
    void ask();
    void showFilm(const core::Result<tasks::FilmedDrawing>& filmed);
    std::int64_t length() const;
    void seek(std::int64_t milliseconds);
    void play();
    void pause();
    void playOrPause();
    void goOn();
    void showTimes();

    AppContext& m_context;
    PlainLabel* m_title;
    PlainLabel* m_facts;
    DrawingScreen* m_planned;
    DrawingScreen* m_byRow;
    QLabel* m_plannedWords;
    QLabel* m_byRowWords;
    QWidget* m_work;
    QSlider* m_time;
    QPushButton* m_play;
    QComboBox* m_speed;
    TickBox* m_inSteps;  ///< No motion: from stroke to stroke.
    std::optional<FilmRequest> m_shown;
    std::optional<tasks::PlannedDrawing> m_drawing;  ///< Of what is on the screens.
    QString m_name;
    bool m_isStale = false;
    std::int64_t m_now = -1;
    QTimer m_ticks;
    QElapsedTimer m_sinceTick;
    BackgroundJob<tasks::FilmedDrawing> m_filming;
};

}  // namespace pantile::desktop
