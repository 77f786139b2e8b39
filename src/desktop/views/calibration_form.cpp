#include "desktop/views/calibration_form.h"

#include <QComboBox>
#include <QDir>
#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include "board/cautions.h"
#include "catalogue/boards.h"
#include "catalogue/canvases.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/calibration_picture.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/heading.h"
#include "desktop/views/mark.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/tick_box.h"

namespace pantile::desktop {

namespace {

constexpr int kUnread = -1;
constexpr int kRoomForPictureBeside = 720;

PlainLabel* makeWords(const QString& text, QWidget* parent) {
    auto* const words = new PlainLabel(parent);
    words->setText(text);
    return words;
}

// A line with a mark before it, both hidden while there is nothing to say.
QHBoxLayout* markedLine(Mark* mark, PlainLabel* words) {
    auto* const line = new QHBoxLayout;
    line->setSpacing(kGap);
    line->addWidget(mark, 0, Qt::AlignTop);
    line->addWidget(words, 1);
    return line;
}

void say(Mark* mark, PlainLabel* label, MarkKind kind, const QString& words) {
    mark->setKind(kind);
    label->setText(words);
    label->setAccessibleDescription(words);
    mark->setVisible(!words.isEmpty());
    label->setVisible(!words.isEmpty());
}

QString within(int least, int most) {
    if (least == most) return QString::number(least);
    return CalibrationForm::tr("%1 to %2").arg(least).arg(most);
}

QString shownGeometry(int pitch, core::Point centre) {
    return CalibrationForm::tr("cells of %1 counts, the centre of the first at %2, %3")
        .arg(pitch)
        .arg(centre.x)
        .arg(centre.y);
}

// The place of `name` in a box, or where it is now.
int placeOf(const QComboBox* box, const QString& name) {
    const int place = box->findData(name);
    return place >= 0 ? place : box->currentIndex();
}

}  // namespace

CalibrationForm::CalibrationForm(AppContext& context, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_parts(new QBoxLayout(QBoxLayout::LeftToRight, this)),
      m_canvas(new ChoiceBox(context.theme, this)),
      m_board(new ChoiceBox(context.theme, this)),
      m_folder(new QLineEdit(this)),
      m_replace(new TickBox(tr("&Replace what is there already"), context.theme, this)),
      m_write(new QPushButton(tr("&Write the calibration"), this)),
      m_writtenMark(new Mark(MarkKind::Done, context.theme, this)),
      m_written(new PlainLabel(this)),
      m_picture(new CalibrationPicture(context.theme, this)),
      m_pictureWords(new PlainLabel(this)),
      m_foundMark(new Mark(MarkKind::Done, context.theme, this)),
      m_found(new PlainLabel(this)),
      m_take(new QPushButton(tr("&Take pitch and origin"), this)),
      m_writing(context.jobs),
      m_taking(context.jobs) {
    setObjectName(QStringLiteral("calibrationForm"));
    auto* const steps = new QWidget(this);
    auto* const down = new QVBoxLayout(steps);
    down->setContentsMargins({});
    down->setSpacing(2 * kGap);
    down->addWidget(makeWriting());
    down->addWidget(makeReading());
    down->addStretch();
    m_pictureWords->setObjectName(QStringLiteral("calibrationPictureWords"));
    m_pictureWords->setFont(figureFont());
    m_pictureWords->setForegroundRole(QPalette::PlaceholderText);
    auto* const sight = new QWidget(this);
    auto* const beside = new QVBoxLayout(sight);
    beside->setContentsMargins({});
    beside->setSpacing(kGap);
    beside->addWidget(m_pictureWords);
    beside->addWidget(m_picture);
    beside->addSpacing(kGap);
    beside->addWidget(makeTaking());  // To be seen while numbers are typed.
    beside->addStretch();
    m_parts->setContentsMargins({});
    m_parts->setSpacing(3 * kGap);
    m_parts->addWidget(steps, 3);
    m_parts->addWidget(sight, 2);
    for (QWidget* const each :
         std::initializer_list<QWidget*>{m_canvas, m_board, m_near.column, m_near.row, m_far.column,
                                         m_far.row, m_pairColumn, m_pairRow}) {
        each->setFocusPolicy(Qt::StrongFocus);
        each->installEventFilter(this);
    }
    connect(m_canvas, &QComboBox::currentIndexChanged, this, &CalibrationForm::showCanvas);
    renew();
}

void CalibrationForm::resizeEvent(QResizeEvent* event) {
    m_parts->setDirection(width() >= kRoomForPictureBeside ? QBoxLayout::LeftToRight
                                                           : QBoxLayout::TopToBottom);
    QWidget::resizeEvent(event);
}

// Who scrolls past a number or a choice must not change it.
bool CalibrationForm::eventFilter(QObject* watched, QEvent* event) {
    const auto* const field = qobject_cast<const QWidget*>(watched);
    if (event->type() != QEvent::Wheel || field == nullptr || field->hasFocus()) return false;
    event->ignore();
    return true;
}

QWidget* CalibrationForm::makeWriting() {
    m_canvas->setObjectName(QStringLiteral("calibrationCanvas"));
    m_canvas->setAccessibleName(tr("Canvas"));
    m_board->setObjectName(QStringLiteral("calibrationBoard"));
    m_board->setAccessibleName(tr("Board"));
    m_folder->setObjectName(QStringLiteral("calibrationFolder"));
    m_folder->setAccessibleName(tr("Folder to write into"));
    m_folder->setPlaceholderText(tr("the board's card, or any folder"));
    m_replace->setObjectName(QStringLiteral("calibrationReplace"));
    m_write->setObjectName(QStringLiteral("calibrationWrite"));
    m_write->setProperty("next", true);
    m_written->setObjectName(QStringLiteral("calibrationWritten"));
    auto* const part = new QWidget(this);
    auto* const pick = new QPushButton(tr("&Choose..."), part);
    pick->setObjectName(QStringLiteral("calibrationPick"));
    auto* const grid = new QGridLayout;
    grid->setHorizontalSpacing(kGap);
    grid->setVerticalSpacing(kGap);
    grid->setColumnStretch(1, 1);
    const auto add = [&](const QString& text, QWidget* field, int columns) {
        const int row = grid->rowCount();
        auto* const label = new QLabel(text, part);
        label->setBuddy(field);
        grid->addWidget(label, row, 0);
        grid->addWidget(field, row, 1, 1, columns);
    };
    add(tr("C&anvas"), m_canvas, 2);
    add(tr("&Board"), m_board, 2);
    add(tr("&Folder"), m_folder, 1);
    grid->addWidget(pick, grid->rowCount() - 1, 2);
    grid->addWidget(m_replace, grid->rowCount(), 1, 1, 2);
    auto* const layout = new QVBoxLayout(part);
    layout->setContentsMargins({});
    layout->setSpacing(kGap);
    layout->addWidget(makeHeading(tr("1. Write the calibration and draw it"), part));
    layout->addWidget(makeWords(
        tr("A load of one slot: marks and rulers. Draw it on an empty canvas of the toolkit. For a "
           "first try, make the canvas's pitch rather too small than too large."),
        part));
    layout->addLayout(grid);
    layout->addWidget(makeCautions(part));
    layout->addWidget(m_write, 0, Qt::AlignLeft);
    layout->addLayout(markedLine(m_writtenMark, m_written));
    connect(pick, &QPushButton::clicked, this, [this] {
        const QString folder = m_context.prompts.pickFolderToWrite(window());
        if (!folder.isEmpty()) m_folder->setText(QDir::toNativeSeparators(folder));
    });
    connect(m_write, &QPushButton::clicked, this, &CalibrationForm::write);
    connect(m_folder, &QLineEdit::returnPressed, this, &CalibrationForm::write);
    say(m_writtenMark, m_written, MarkKind::Done, {});
    return part;
}

QWidget* CalibrationForm::makeCautions(QWidget* parent) {
    QStringList lines;
    for (const std::string_view each : board::cautions()) lines.append(fromUtf8(each));
    auto* const part = new QWidget(parent);
    auto* const words = makeWords(lines.join(QLatin1Char('\n')), part);
    words->setObjectName(QStringLiteral("calibrationCautions"));
    words->setFont(figureFont());
    auto* const heading = new QLabel(fromUtf8(board::kCautionsHeading), part);
    QFont bold = heading->font();
    bold.setWeight(QFont::DemiBold);
    heading->setFont(bold);
    auto* const text = new QVBoxLayout;
    text->setSpacing(kGap / 2);
    text->addWidget(heading);
    text->addWidget(words);
    auto* const line = new QHBoxLayout(part);
    line->setContentsMargins({});
    line->setSpacing(kGap);
    line->addWidget(new Mark(MarkKind::Caution, m_context.theme, part), 0, Qt::AlignTop);
    line->addLayout(text, 1);
    return part;
}

QWidget* CalibrationForm::makeReading() {
    const QString unread = tr("not read");
    const QString none = tr("none touch");
    m_near = {makeNumber("nearColumn", tr("1, mark at the top left: column"), unread),
              makeNumber("nearRow", tr("1, mark at the top left: row"), unread)};
    m_far = {makeNumber("farColumn", tr("2, mark at the bottom right: column"), unread),
             makeNumber("farRow", tr("2, mark at the bottom right: row"), unread)};
    m_pairColumn =
        makeNumber("pairColumn", tr("3, column of the right one of the ticks that touch"), none);
    m_pairRow = makeNumber("pairRow", tr("4, row of the lower one of the ticks that touch"), none);
    auto* const part = new QWidget(this);
    auto* const grid = new QGridLayout;
    grid->setHorizontalSpacing(kGap);
    grid->setVerticalSpacing(kGap);
    grid->setColumnStretch(0, 1);
    grid->addWidget(new QLabel(tr("Column"), part), 0, 1);
    grid->addWidget(new QLabel(tr("Row"), part), 0, 2);
    addPlace(*grid, tr("1  The mark at the top left"), m_near.column, m_near.row);
    addPlace(*grid, tr("2  The mark at the bottom right"), m_far.column, m_far.row);
    addPlace(*grid,
             tr("3  In the row of ticks, from the left, the first two that touch: the right "
                "one"),
             m_pairColumn, nullptr);
    addPlace(*grid,
             tr("4  In the column of ticks, from the top, the first two that touch: the "
                "lower one"),
             nullptr, m_pairRow);
    auto* const layout = new QVBoxLayout(part);
    layout->setContentsMargins({});
    layout->setSpacing(kGap);
    layout->addWidget(makeHeading(tr("2. Read it off"), part));
    layout->addWidget(makeWords(
        tr("Count the toolkit's own cells, from 0. The numbers stand in the picture too."), part));
    layout->addLayout(grid);
    return part;
}

QSpinBox* CalibrationForm::makeNumber(const char* name, const QString& label,
                                      const QString& unread) {
    auto* const number = new QSpinBox(this);
    number->setObjectName(QLatin1String(name));
    number->setAccessibleName(label);
    number->setRange(kUnread, kUnread);
    number->setSpecialValueText(unread);
    number->setButtonSymbols(QAbstractSpinBox::NoButtons);
    number->setFixedWidth(fontMetrics().averageCharWidth() * 14 + 2 * kGap);
    connect(number, &QSpinBox::valueChanged, this, &CalibrationForm::showReading);
    return number;
}

void CalibrationForm::addPlace(QGridLayout& grid, const QString& words, QSpinBox* column,
                               QSpinBox* row) {
    const int line = grid.rowCount();
    auto* const label = makeWords(words, this);
    label->setAlignment(Qt::AlignVCenter);
    grid.addWidget(label, line, 0);
    if (column != nullptr) grid.addWidget(column, line, 1);
    if (row != nullptr) grid.addWidget(row, line, 2);
}

QWidget* CalibrationForm::makeTaking() {
    m_found->setObjectName(QStringLiteral("calibrationFound"));
    m_take->setObjectName(QStringLiteral("calibrationTake"));
    auto* const part = new QWidget(this);
    auto* const layout = new QVBoxLayout(part);
    layout->setContentsMargins({});
    layout->setSpacing(kGap);
    layout->addWidget(makeHeading(tr("3. Take what explains it"), part));
    layout->addLayout(markedLine(m_foundMark, m_found));
    layout->addWidget(m_take, 0, Qt::AlignLeft);
    connect(m_take, &QPushButton::clicked, this, &CalibrationForm::take);
    return part;
}

void CalibrationForm::choose(const QString& canvas, const QString& board) {
    m_canvas->setCurrentIndex(placeOf(m_canvas, canvas));
    m_board->setCurrentIndex(placeOf(m_board, board));
}

void CalibrationForm::renew() {
    const core::Canvas before = canvas() != nullptr ? *canvas() : core::Canvas{};
    const QString boardBefore = m_board->currentData().toString();
    const auto canvases = catalogue::listCanvases(m_context.library);
    const auto boards = catalogue::listBoards(m_context.library);
    if (!canvases || !boards) {
        const core::Error& error = canvases ? boards.error() : canvases.error();
        return say(m_writtenMark, m_written, MarkKind::Caution, shownError(error));
    }
    {
        const QSignalBlocker quiet(m_canvas);
        m_canvases = *canvases;
        m_canvas->clear();
        m_board->clear();
        for (const core::Canvas& each : m_canvases)
            m_canvas->addItem(shownText(each.name), QString::fromStdString(each.name));
        for (const core::Board& each : *boards)
            m_board->addItem(shownText(each.name), QString::fromStdString(each.name));
        choose(QString::fromStdString(before.name), boardBefore);
    }
    // What was read off stays while the canvas is the one that it was read off from.
    if (canvas() == nullptr || *canvas() != before) showCanvas();
    showBusy();
}

const core::Canvas* CalibrationForm::canvas() const {
    const int place = m_canvas->currentIndex();
    return place >= 0 && place < std::ssize(m_canvases)
               ? &m_canvases[static_cast<std::size_t>(place)]
               : nullptr;
}

void CalibrationForm::showCanvas() {
    const core::Size size = canvas() != nullptr ? canvas()->size : core::Size{};
    for (QSpinBox* const each : {m_near.column, m_far.column, m_pairColumn})
        each->setMaximum(size.width - 1);
    for (QSpinBox* const each : {m_near.row, m_far.row, m_pairRow})
        each->setMaximum(size.height - 1);
    forgetReading();
}

void CalibrationForm::forgetReading() {
    for (QSpinBox* const each :
         {m_near.column, m_near.row, m_far.column, m_far.row, m_pairColumn, m_pairRow}) {
        const QSignalBlocker quiet(each);
        each->setValue(kUnread);
    }
    showReading();
}

std::optional<board::CalibrationReading> CalibrationForm::reading() const {
    for (const QSpinBox* const each : {m_near.column, m_near.row, m_far.column, m_far.row}) {
        if (each->value() == kUnread) return std::nullopt;
    }
    const auto pair = [](const QSpinBox* number) {
        return number->value() == kUnread ? std::nullopt : std::optional(number->value());
    };
    return board::CalibrationReading{{m_near.column->value(), m_near.row->value()},
                                     {m_far.column->value(), m_far.row->value()},
                                     pair(m_pairColumn),
                                     pair(m_pairRow)};
}

// The picture is of what was found, to be held against the toolkit's screen; until then of the
// canvas as the library has it.
void CalibrationForm::showReading() {
    m_take->setEnabled(false);
    m_picture->setSight(std::nullopt, {});
    m_pictureWords->clear();
    say(m_foundMark, m_found, MarkKind::Done, {});
    if (canvas() == nullptr) return;
    const core::CanvasGeometry& geometry = canvas()->geometry;
    int pitch = geometry.cellPitch;
    core::Point centre = geometry.gridCentre;
    m_pictureWords->setText(tr("What it looks like if the canvas is right as it is"));
    if (const auto read = reading()) {
        const auto found = board::calibratedFrom(*canvas(), *read);
        showFound(found, *read);
        if (found) {
            pitch = found->cellPitch;
            centre = found->gridCentre;
            m_pictureWords->setText(
                tr("What it looks like with the pitch and origin found: compare it with the "
                   "toolkit's screen"));
        }
    }
    const auto sight = board::calibrationOn(*canvas(), pitch, centre);
    if (sight) return m_picture->setSight(*sight, canvas()->size);
    m_pictureWords->setText(shownError(sight.error()));
}

void CalibrationForm::showFound(const core::Result<board::Calibrated>& found,
                                const board::CalibrationReading& read) {
    if (!found) return say(m_foundMark, m_found, MarkKind::Caution, shownError(found.error()));
    const core::CanvasGeometry& now = canvas()->geometry;
    const QString words =
        tr("Found: %1. The library has: %2.\n"
           "A pitch of %3 counts explains the cells; the grid's place is sure within %4 counts "
           "across and %5 down.\n%6")
            .arg(shownGeometry(found->cellPitch, found->gridCentre),
                 shownGeometry(now.cellPitch, now.gridCentre),
                 within(found->leastPitch, found->mostPitch))
            .arg(found->unsure.x)
            .arg(found->unsure.y)
            .arg(board::isSettled(*found, read)
                     ? tr("The marks of a texture will lie in their cells.")
                     : tr("Take it, then draw the calibration once more: it is exact when its "
                          "ticks touch in row and column."));
    say(m_foundMark, m_found, MarkKind::Done, words);
    showBusy();
}

void CalibrationForm::write() {
    const QString folder = m_folder->text().trimmed();
    if (m_writing.isRunning() || canvas() == nullptr) return;
    if (folder.isEmpty()) {
        m_folder->setFocus();
        return say(m_writtenMark, m_written, MarkKind::Caution,
                   tr("There is no folder to write into. Choose one, or type its name."));
    }
    CalibrationRequest request{m_context.libraryPath,
                               *canvas(),
                               m_board->currentData().toString().toStdString(),
                               QDir::fromNativeSeparators(folder).toStdU16String(),
                               {}};
    if (m_replace->isChecked()) request.options.ifExists = tasks::IfExists::Replace;
    m_writing.start(
        [request](const core::Progress& progress) { return writeCalibration(request, progress); },
        [this](const core::Result<tasks::WrittenLoad>& written) { showWritten(written); });
    say(m_writtenMark, m_written, MarkKind::Done, tr("Writing and proving it."));
    showBusy();
}

void CalibrationForm::showWritten(const core::Result<tasks::WrittenLoad>& written) {
    showBusy();
    if (!written) {
        QString words = shownError(written.error());
        if (written.error().kind == core::ErrorKind::AlreadyExists)
            words += QLatin1Char('\n') + tr("Or replace it: tick that above, and write again.");
        return say(m_writtenMark, m_written, MarkKind::Caution, words);
    }
    QStringList lines = {tr("Written, and proved by replay. It draws in %1.")
                             .arg(shownDuration(written->choice.milliseconds))};
    for (const auto& file : written->files) lines.append(shownText(file.string()));
    say(m_writtenMark, m_written, MarkKind::Done, lines.join(QLatin1Char('\n')));
}

void CalibrationForm::take() {
    const auto read = reading();
    if (!read || m_taking.isRunning()) return;
    m_taking.start(
        [path = m_context.libraryPath, canvas = *canvas(), read = *read](const core::Progress&) {
            return takeCalibration(path, canvas, read);
        },
        [this](const core::Result<tasks::CalibratedCanvas>& result) { showTaken(result); });
    showBusy();
}

void CalibrationForm::showTaken(const core::Result<tasks::CalibratedCanvas>& result) {
    if (!result) {
        say(m_foundMark, m_found, MarkKind::Caution, shownError(result.error()));
        return showBusy();
    }
    const core::CanvasGeometry& geometry = result->canvas.geometry;
    const QString words = tr("The canvas %1 has %2. Undo in the library takes it back.")
                              .arg(shownText(result->canvas.name),
                                   shownGeometry(geometry.cellPitch, geometry.gridCentre));
    // The reading was for the canvas as it was: taken twice it would be wrong.
    renew();
    say(m_foundMark, m_found, MarkKind::Done, words);
    Q_EMIT taken(words);
}

void CalibrationForm::showBusy() {
    m_write->setEnabled(!m_writing.isRunning() && canvas() != nullptr && m_board->count() > 0);
    const auto read = reading();
    m_take->setEnabled(!m_taking.isRunning() && canvas() != nullptr && read &&
                       board::calibratedFrom(*canvas(), *read).has_value());
}

void CalibrationForm::finishAll() {
    m_writing.stopAndWait();
    if (m_taking.isRunning()) m_taking.waitForDone();
}

}  // namespace pantile::desktop
