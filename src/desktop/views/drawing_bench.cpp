#include "desktop/views/drawing_bench.h"

#include <algorithm>
#include <array>

#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QSlider>
#include <QStyle>
#include <QVBoxLayout>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/drawing_screen.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/tick_box.h"
#include "desktop/views/wrapped_row.h"

namespace pantile::desktop {

namespace {

constexpr std::array kSpeeds = {1, 4, 16, 64};
constexpr std::size_t kUsualSpeed = 1;
constexpr int kTickMs = 33;    // Thirty pictures a second.
constexpr int kStepMs = 1000;  // Between strokes when nothing is to move.

bool drawsTheSame(const tasks::PlannedDrawing& one, const tasks::PlannedDrawing& other) {
    return one.plan == other.plan && one.canvas == other.canvas && one.board == other.board &&
           one.fitted.grid == other.fitted.grid && one.fitted.palette == other.fitted.palette;
}

// Those who asked their platform for less motion have its animations off.
bool wantsNoMotion(const QWidget& widget) {
    return widget.style()->styleHint(QStyle::SH_Widget_Animation_Duration, nullptr, &widget) == 0;
}

}  // namespace

DrawingBench::DrawingBench(AppContext& context, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_title(new PlainLabel(this)),
      m_facts(new PlainLabel(this)),
      m_planned(new DrawingScreen(context.theme, this)),
      m_byRow(new DrawingScreen(context.theme, this)),
      m_plannedWords(new QLabel(this)),
      m_byRowWords(new QLabel(this)),
      m_work(new QWidget(this)),
      m_time(new QSlider(Qt::Horizontal, this)),
      m_play(nullptr),
      m_speed(new ChoiceBox(context.theme, this)),
      m_inSteps(new TickBox(tr("Stroke b&y stroke"), context.theme, this)),
      m_filming(context.jobs) {
    setObjectName(QStringLiteral("drawingBench"));
    setAccessibleName(tr("Drawing"));
    setFocusPolicy(Qt::StrongFocus);
    m_title->setObjectName(QStringLiteral("drawingTitle"));
    m_title->setFont(headingFont());
    m_facts->setObjectName(QStringLiteral("drawingFacts"));
    m_facts->setForegroundRole(QPalette::PlaceholderText);
    m_time->setObjectName(QStringLiteral("drawingTime"));
    m_time->setAccessibleName(tr("Time of the drawing"));
    m_inSteps->setObjectName(QStringLiteral("drawingInSteps"));
    m_inSteps->setToolTip(tr("Without motion: from one stroke to the next, a second each"));
    m_inSteps->setChecked(wantsNoMotion(*this));

    auto* const work = new QVBoxLayout(m_work);
    work->setContentsMargins({});
    work->setSpacing(kGap);
    work->addWidget(makeScreens(), 1);
    work->addWidget(m_time);
    work->addWidget(makeButtons());
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, kGap);
    layout->setSpacing(kGap);
    layout->addWidget(m_title);
    layout->addWidget(m_facts);
    layout->addWidget(m_work, 1);
    layout->addStretch();
    connectParts();
    showWords(tr("Choose a slot in the tray: its drawing is shown here."));
}

QWidget* DrawingBench::makeScreens() {
    auto* const screens = new QWidget(m_work);
    m_planned->setObjectName(QStringLiteral("plannedScreen"));
    m_planned->setAccessibleName(tr("The planned way"));
    m_byRow->setObjectName(QStringLiteral("byRowScreen"));
    m_byRow->setAccessibleName(tr("Row by row"));
    m_plannedWords->setObjectName(QStringLiteral("plannedWords"));
    m_byRowWords->setObjectName(QStringLiteral("byRowWords"));
    auto* const layout = new QGridLayout(screens);
    layout->setContentsMargins({});
    layout->setHorizontalSpacing(2 * kGap);
    layout->setVerticalSpacing(kGap / 2);
    layout->addWidget(m_plannedWords, 0, 0);
    layout->addWidget(m_byRowWords, 0, 1);
    layout->addWidget(m_planned, 1, 0);
    layout->addWidget(m_byRow, 1, 1);
    layout->setColumnStretch(0, 1);
    layout->setColumnStretch(1, 1);
    layout->setRowStretch(1, 1);
    return screens;
}

QPushButton* DrawingBench::makeButton(const char* name, const QString& words, const QString& tip) {
    auto* const button = new QPushButton(words, this);
    button->setObjectName(QLatin1String(name));
    button->setToolTip(tip);
    return button;
}

QWidget* DrawingBench::makeButtons() {
    auto* const row = new WrappedRow(m_work);
    m_play = makeButton("playDrawing", tr("Play"), tr("Play or pause (Space)"));
    // As wide as either of its words, so that nothing moves.
    m_play->setMinimumWidth(fontMetrics().horizontalAdvance(tr("Pause")) + 6 * kGap);
    auto* const start = makeButton("drawingStart", tr("To start"), tr("To the start (Home)"));
    auto* const back =
        makeButton("strokeBack", tr("Stroke back"), tr("To the stroke before (Ctrl+Left)"));
    auto* const on = makeButton("strokeOn", tr("Stroke on"), tr("To the next stroke (Ctrl+Right)"));
    connect(start, &QPushButton::clicked, this, [this] {
        pause();
        seek(-1);
    });
    connect(back, &QPushButton::clicked, this, [this] {
        pause();
        if (m_planned->state() != nullptr) seek(m_planned->state()->strokeBefore());
    });
    connect(on, &QPushButton::clicked, this, [this] {
        pause();
        if (m_planned->state() != nullptr) seek(m_planned->state()->nextStroke());
    });
    m_speed->setObjectName(QStringLiteral("drawingSpeed"));
    m_speed->setAccessibleName(tr("Speed"));
    for (const int speed : kSpeeds)
        m_speed->addItem(speed == 1 ? tr("real speed") : tr("%1 times as fast").arg(speed));
    m_speed->setCurrentIndex(kUsualSpeed);
    for (QWidget* const each : {static_cast<QWidget*>(m_play), static_cast<QWidget*>(start),
                                static_cast<QWidget*>(back), static_cast<QWidget*>(on),
                                static_cast<QWidget*>(m_speed), static_cast<QWidget*>(m_inSteps)})
        row->add(each);
    return row;
}

void DrawingBench::connectParts() {
    connect(m_play, &QPushButton::clicked, this, &DrawingBench::playOrPause);
    connect(&m_ticks, &QTimer::timeout, this, &DrawingBench::goOn);
    // By hand: while it plays the slider follows the clock.
    connect(m_time, &QSlider::sliderPressed, this, &DrawingBench::pause);
    connect(m_time, &QSlider::valueChanged, this, [this](int value) { seek(value); });
    connect(m_inSteps, &QAbstractButton::toggled, this, [this] {
        if (m_ticks.isActive()) play();
    });
}

void DrawingBench::showTexture(core::TextureId id, const QString& title, const std::string& board,
                               const std::string& canvas) {
    FilmRequest request{m_context.libraryPath, id, board, canvas};
    m_name = title;
    m_title->setText(title);
    if (m_shown == request) return;
    m_shown = std::move(request);
    m_drawing.reset();
    m_isStale = true;
    if (isVisible()) ask();
}

void DrawingBench::showWords(const QString& words) {
    pause();
    m_filming.stop();
    m_shown.reset();
    m_drawing.reset();
    m_isStale = false;
    m_title->setText(tr("Drawing"));
    m_facts->setText(words);
    m_planned->clear();
    m_byRow->clear();
    m_work->hide();
}

void DrawingBench::renew() {
    if (!m_shown) return;
    m_isStale = true;
    if (isVisible()) ask();
}

void DrawingBench::ask() {
    m_isStale = false;
    if (!m_drawing) {
        pause();
        m_facts->setText(tr("Being planned ..."));
    }
    m_filming.start([request = *m_shown](
                        const core::Progress& progress) { return makeFilm(request, progress); },
                    [this](const core::Result<tasks::FilmedDrawing>& filmed) { showFilm(filmed); });
}

void DrawingBench::showFilm(const core::Result<tasks::FilmedDrawing>& filmed) {
    if (!m_shown) return;
    if (!filmed) {
        const FilmRequest shown = *m_shown;
        showWords(shownError(filmed.error()));
        m_title->setText(m_name);
        m_shown = shown;  // So that it is tried again when something changes.
        return;
    }
    // Most changes of the library are none of the drawing, which plays on.
    if (m_drawing && drawsTheSame(*m_drawing, filmed->planned)) return;
    m_drawing = filmed->planned;
    const tasks::PlannedDrawing& planned = *m_drawing;
    const std::int64_t quick = filmed->film.end.milliseconds;
    const std::int64_t plain = filmed->byRow.end.milliseconds;
    m_facts->setText(
        tr("%1 instead of %2 row by row, on %3 by %4. %5 colours picked, the pen lifted %6 times.")
            .arg(shownDuration(quick), shownDuration(plain), shownText(planned.canvas.name),
                 shownText(planned.board.name))
            .arg(planned.plan.picks)
            .arg(planned.plan.lifts));
    m_planned->showFilm(filmed->film, planned.canvas, planned.fitted);
    m_byRow->showFilm(filmed->byRow, planned.canvas, planned.fitted);
    m_time->setRange(-1, static_cast<int>(std::max(quick, plain)));
    m_time->setSingleStep(static_cast<int>(std::max<std::int64_t>(length() / 200, 1)));
    m_time->setPageStep(static_cast<int>(std::max<std::int64_t>(length() / 20, 1)));
    m_work->show();
    pause();
    seek(-1);
}

std::int64_t DrawingBench::length() const {
    return m_time->maximum();
}

void DrawingBench::seek(std::int64_t milliseconds) {
    m_now = std::clamp<std::int64_t>(milliseconds, -1, length());
    m_planned->seek(m_now);
    m_byRow->seek(m_now);
    {
        const QSignalBlocker quiet(m_time);
        m_time->setValue(static_cast<int>(m_now));
    }
    showTimes();
}

void DrawingBench::showTimes() {
    const auto words = [this](const QString& way, const FilmState* state) {
        if (state == nullptr) return QString();
        const std::int64_t all = state->milliseconds();
        const std::int64_t now = std::clamp<std::int64_t>(m_now, 0, all);
        return tr("%1: %2 of %3").arg(way, shownDuration(now), shownDuration(all));
    };
    m_plannedWords->setText(words(tr("Planned"), m_planned->state()));
    m_byRowWords->setText(words(tr("Row by row"), m_byRow->state()));
}

void DrawingBench::playOrPause() {
    if (m_ticks.isActive()) return pause();
    if (m_now >= length()) seek(-1);
    play();
}

void DrawingBench::play() {
    if (m_planned->state() == nullptr) return;
    m_play->setText(tr("Pause"));
    m_sinceTick.start();
    m_ticks.start(m_inSteps->isChecked() ? kStepMs : kTickMs);
}

void DrawingBench::pause() {
    m_ticks.stop();
    m_play->setText(tr("Play"));
}

void DrawingBench::goOn() {
    const qint64 passed = m_sinceTick.restart();
    if (m_inSteps->isChecked()) {
        // The row-by-row way goes on alone once the planned one is done.
        const FilmState& planned = *m_planned->state();
        const bool isDone = m_now >= planned.milliseconds();
        seek(isDone ? m_byRow->state()->nextStroke() : planned.nextStroke());
    } else {
        seek(m_now + passed * kSpeeds.at(static_cast<std::size_t>(m_speed->currentIndex())));
    }
    if (m_now >= length()) pause();
}

void DrawingBench::keyPressEvent(QKeyEvent* event) {
    const FilmState* const state = m_planned->state();
    if (state == nullptr) return QWidget::keyPressEvent(event);
    const bool byStroke = event->modifiers().testFlag(Qt::ControlModifier);
    switch (event->key()) {
        case Qt::Key_Space:
            return playOrPause();
        case Qt::Key_Right:
            pause();
            return seek(byStroke ? state->nextStroke() : state->nextReport());
        case Qt::Key_Left:
            pause();
            return seek(byStroke ? state->strokeBefore() : state->reportBefore());
        case Qt::Key_Home:
            pause();
            return seek(-1);
        case Qt::Key_End:
            pause();
            return seek(length());
        default:
            QWidget::keyPressEvent(event);
    }
}

void DrawingBench::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (m_isStale && m_shown) ask();
}

void DrawingBench::hideEvent(QHideEvent* event) {
    pause();
    QWidget::hideEvent(event);
}

void DrawingBench::stopAndWait() {
    m_ticks.stop();
    m_filming.stopAndWait();
}

}  // namespace pantile::desktop
