#include "desktop/views/edit_page.h"

#include <array>

#include <QAction>
#include <QActionGroup>
#include <QHideEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "catalogue/palettes.h"
#include "catalogue/reader.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/edit_canvas.h"
#include "desktop/views/folding_splitter.h"
#include "desktop/views/heading.h"
#include "desktop/views/notice_bar.h"
#include "desktop/views/operation_form.h"
#include "desktop/views/palette_picker.h"
#include "desktop/views/palette_shelf.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/tool_options.h"
#include "desktop/views/words_page.h"
#include "desktop/views/work_costs.h"
#include "desktop/views/wrapped_row.h"

namespace pantile::desktop {

using core::Point;

namespace {

constexpr int kEditBenchWidth = 312;
constexpr int kRoomForEditBench = 720;

struct ToolAction {
    ActionId id;
    Tool tool;
};

// In the order of the row.
constexpr std::array<ToolAction, 9> kToolActions = {{
    {ActionId::PenTool, Tool::Pen},
    {ActionId::LineTool, Tool::Line},
    {ActionId::CurveTool, Tool::Curve},
    {ActionId::RectangleTool, Tool::Rectangle},
    {ActionId::EllipseTool, Tool::Ellipse},
    {ActionId::FillTool, Tool::Fill},
    {ActionId::FillAlikeTool, Tool::FillAlike},
    {ActionId::GradientTool, Tool::Gradient},
    {ActionId::CropTool, Tool::Crop},
}};

}  // namespace

EditPage::EditPage(AppContext& context, Actions& actions, const ChosenTextures& chosen,
                   NoticeBar& notices, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_actions(actions),
      m_chosen(chosen),
      m_notices(notices),
      m_painting(m_session, nullptr),
      m_words(new PlainLabel(this)),
      m_canvas(new EditCanvas(context.theme, this)),
      m_cellWords(new PlainLabel(this)),
      m_palette(new PalettePicker(context.theme, this)),
      m_costs(new WorkCosts(context, this)),
      m_toolTitle(makeHeading({}, this)),
      m_options(new ToolOptions(actions, context.theme, this)),
      m_form(new OperationForm(context.theme, this)),
      m_work(new QWidget(this)),
      m_nothing(new WordsPage(actions[ActionId::LibraryPlace], tr("Go to the library"), this)),
      m_either(new QStackedWidget(this)),
      m_trying(context.jobs),
      m_keeping(context.jobs),
      m_recovering(context.jobs),
      m_saver(context.libraryPath, context.jobs, m_session) {
    setObjectName(QStringLiteral("editPage"));
    makeLayout();
    connectCanvas();
    connectTools();
    connectHistory();
    connectActions();
    chooseTool(Tool::Pen);
    showNothing(tr("Choose a texture in the library: it lies here then, to be touched up."));
    connect(&m_saver, &WorkSaver::failed, this,
            [this](const core::Error& error) { say(shownError(error)); });
    recover();
}

void EditPage::makeLayout() {
    auto* const both = new FoldingSplitter(kRoomForEditBench, m_work);
    both->addWidget(makeMiddle());
    both->addWidget(makeBench());
    both->setStretchFactor(0, 1);
    both->setStretchFactor(1, 0);
    both->setSizes({2 * kEditBenchWidth, kEditBenchWidth});
    auto* const work = new QVBoxLayout(m_work);
    work->setContentsMargins({});
    work->setSpacing(0);
    work->addWidget(makeHead());
    work->addWidget(both, 1);
    m_nothing->setObjectName(QStringLiteral("nothingToEdit"));
    m_either->addWidget(m_work);
    m_either->addWidget(m_nothing);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    layout->addWidget(m_either);
}

QWidget* EditPage::makeHead() {
    auto* const head = new QWidget(m_work);
    m_words->setObjectName(QStringLiteral("editWords"));
    m_words->setForegroundRole(QPalette::PlaceholderText);
    auto* const layout = new QHBoxLayout(head);
    layout->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, kGap);
    layout->setSpacing(kGap);
    layout->addWidget(makeHeading(tr("Edit"), head));
    layout->addSpacing(kGap);
    layout->addWidget(m_words, 1, Qt::AlignVCenter);
    layout->addWidget(makeActionButton(m_actions[ActionId::Undo], tr("Undo"), head));
    layout->addWidget(makeActionButton(m_actions[ActionId::Redo], tr("Redo"), head));
    layout->addWidget(makeNextButton(m_actions[ActionId::Keep], tr("Keep"), head));
    return head;
}

QWidget* EditPage::makeMiddle() {
    auto* const middle = new QWidget(m_work);
    m_cellWords->setObjectName(QStringLiteral("cellWords"));
    m_cellWords->setFont(figureFont());
    m_cellWords->setForegroundRole(QPalette::PlaceholderText);
    auto* const tools = new WrappedRow(middle);
    for (const ToolAction& each : kToolActions) {
        QAction& action = m_actions[each.id];
        tools->add(makeActionButton(action, toolName(each.tool), tools));
    }
    auto* const layout = new QVBoxLayout(middle);
    layout->setContentsMargins(2 * kGap, 0, 2 * kGap, 2 * kGap);
    layout->setSpacing(kGap);
    layout->addWidget(m_canvas, 1);
    layout->addWidget(m_cellWords);
    layout->addWidget(new PaletteShelf(m_palette, middle));
    layout->addWidget(tools);
    return middle;
}

QWidget* EditPage::makeBench() {
    auto* const scroll = new QScrollArea(m_work);
    scroll->setObjectName(QStringLiteral("editBench"));
    scroll->setAccessibleName(tr("Costs, options and operations"));
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* const bench = new QWidget(scroll);
    bench->setObjectName(QStringLiteral("bench"));
    auto* const layout = new QVBoxLayout(bench);
    layout->setContentsMargins(2 * kGap, kGap, 2 * kGap, 2 * kGap);
    layout->setSpacing(kGap);
    layout->addWidget(m_costs);
    layout->addSpacing(kGap);
    layout->addWidget(m_toolTitle);
    layout->addWidget(m_options);
    layout->addSpacing(kGap);
    layout->addWidget(makeHeading(tr("Whole texture"), bench));
    layout->addWidget(m_form);
    layout->addStretch();
    scroll->setWidget(bench);
    scroll->setMinimumWidth(kEditBenchWidth * 3 / 4);
    return scroll;
}

void EditPage::connectCanvas() {
    connect(m_canvas, &EditCanvas::pressed, this, [this](Point cell) {
        m_form->leave();
        m_painting.press(cell);
        showCell(cell);
    });
    connect(m_canvas, &EditCanvas::entered, this, [this](Point cell) {
        m_form->leave();
        m_painting.toggle(cell);
        showCell(cell);
    });
    connect(m_canvas, &EditCanvas::moved, &m_painting, &Painting::move);
    connect(m_canvas, &EditCanvas::moved, this, &EditPage::showCell);
    connect(m_canvas, &EditCanvas::hovered, &m_painting, &Painting::hover);
    connect(m_canvas, &EditCanvas::hovered, this, &EditPage::showCell);
    connect(m_canvas, &EditCanvas::released, &m_painting, &Painting::release);
    connect(m_canvas, &EditCanvas::cancelled, &m_painting, &Painting::cancel);
    connect(m_canvas, &EditCanvas::picked, this, &EditPage::pickUp);
    connect(&m_painting, &Painting::shownChanged, this, &EditPage::showWork);
    connect(&m_painting, &Painting::failed, this,
            [this](const core::Error& error) { say(shownError(error)); });
}

void EditPage::connectTools() {
    auto* const tools = new QActionGroup(this);
    for (const ToolAction& each : kToolActions) {
        QAction& action = m_actions[each.id];
        tools->addAction(&action);
        connect(&action, &QAction::triggered, this, [this, tool = each.tool] { chooseTool(tool); });
    }
    connect(m_palette, &PalettePicker::picked, this, &EditPage::applySettings);
    connect(m_options, &ToolOptions::changed, this, &EditPage::applySettings);
    connect(m_form, &OperationForm::changed, this, &EditPage::tryOperation);
    connect(m_form, &OperationForm::accepted, this, &EditPage::applyOperation);
}

void EditPage::connectHistory() {
    connect(&m_session, &EditSession::changed, this, [this] {
        if (m_form->asked()) tryOperation();
        showWork();
    });
    connect(&m_actions[ActionId::Undo], &QAction::triggered, this, [this] {
        if (m_painting.isUnderWay()) return m_painting.cancel();
        m_session.undo();
    });
    connect(&m_actions[ActionId::Redo], &QAction::triggered, &m_session, &EditSession::redo);
    connect(&m_actions[ActionId::Keep], &QAction::triggered, this, &EditPage::keep);
    connect(&m_actions[ActionId::TakeBackAll], &QAction::triggered, this, [this] {
        m_painting.cancel();
        m_session.change(tr("Take back all"), m_session.kept());
    });
}

void EditPage::connectActions() {
    for (const ActionRow& row : actionTable()) {
        if (row.heard == Heard::InEdit) addAction(&m_actions[row.id]);
    }
    const auto on = [this](ActionId id, auto&& slot) {
        connect(&m_actions[id], &QAction::triggered, this, slot);
    };
    on(ActionId::NextColour, [this] { m_palette->pick(m_palette->colour() + 1); });
    on(ActionId::PreviousColour, [this] { m_palette->pick(m_palette->colour() - 1); });
    on(ActionId::WholeTexture, [this] { m_canvas->fit(); });
    on(ActionId::Larger, [this] { m_canvas->zoomIn(); });
    on(ActionId::Smaller, [this] { m_canvas->zoomOut(); });
    connect(&m_actions[ActionId::CellLines], &QAction::toggled, m_canvas,
            &EditCanvas::setShowsLines);
    m_actions[ActionId::CellLines].setChecked(true);
}

bool EditPage::keepAndStop() {
    m_painting.settle();
    m_keeping.waitForDone();
    if (m_session.isChanged()) {
        const tasks::UnkeptWork work = unkept();
        kept(work, keepInLibrary(m_context.libraryPath, work));
    }
    if (m_couldNotKeep) return false;
    m_trying.stopAndWait();
    m_recovering.waitForDone();
    m_costs->stopAndWait();
    m_saver.finish();
    return true;
}

void EditPage::renew() {
    if (!isVisible() || !m_session.isOpen() || m_keeping.isRunning()) return;
    const auto record = catalogue::readTexture(m_context.library, m_session.id());
    const bool isThere = record && !record->row.removed;
    if (isThere && haveSamePicture(record->texture, m_session.kept())) return;
    if (!m_session.isChanged() && !m_painting.isUnderWay()) return open(m_session.id());
    if (std::exchange(m_hasWarned, true)) return;
    say(tr("Another program has changed %1. What you keep becomes a texture of its own.")
            .arg(shownTitle(m_session.kept().text().title)));
}

void EditPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (event->spontaneous()) return;
    takeUp();
    m_canvas->setFocus();
}

void EditPage::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    if (!event->spontaneous()) keep();
}

void EditPage::keyPressEvent(QKeyEvent* event) {
    const int digit = event->key() - Qt::Key_0;
    const bool isPlain = (event->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
    if (isPlain && digit >= 0 && digit <= 9) {
        m_palette->typeDigit(digit);
    } else {
        QWidget::keyPressEvent(event);
    }
}

bool EditPage::isOtherChosen() const {
    const std::vector<core::TextureId>& ids = m_chosen.ids();
    return !ids.empty() && (!m_session.isOpen() || ids.front() != m_session.id());
}

void EditPage::takeUp() {
    if (!isOtherChosen()) return renew();
    if (m_keeping.isRunning()) return;  // What was made before is kept first.
    if (m_couldNotKeep) {
        return say(tr("%1 could not be kept and lies here still.")
                       .arg(shownTitle(m_session.kept().text().title)));
    }
    open(m_chosen.ids().front());
}

void EditPage::open(core::TextureId id) {
    const auto record = catalogue::readTexture(m_context.library, id);
    if (!record) return showNothing(shownError(record.error()));
    if (record->row.removed) {
        return showNothing(tr("%1 was removed from the library. Choose another texture.")
                               .arg(shownTitle(record->row.title)));
    }
    if (const auto palettes = catalogue::listPalettes(m_context.library)) {
        std::vector<std::string> names;
        for (const catalogue::NamedPalette& each : *palettes) names.push_back(each.name);
        m_form->setPaletteNames(names);
    }
    m_form->leave();
    m_painting.cancel();
    m_hasWarned = false;
    m_costs->compareWith(record->texture);
    m_session.open(id, record->texture);
}

void EditPage::showNothing(const QString& why) {
    m_nothing->setWords(why);
    m_form->leave();
    m_painting.cancel();
    m_session.close();
    showWork();
}

void EditPage::say(const QString& caution) {
    m_notices.showNotice({MarkKind::Caution, caution, {}});
}

void EditPage::chooseTool(Tool tool) {
    m_tool = tool;
    for (const ToolAction& each : kToolActions) {
        if (each.tool == tool) m_actions[each.id].setChecked(true);
    }
    m_toolTitle->setText(toolName(tool));
    m_options->setTool(tool);
    applySettings();
}

void EditPage::applySettings() {
    ToolSettings settings;
    settings.tool = m_tool;
    settings.colour = m_palette->colour();
    settings.other = m_palette->other();
    settings = m_options->applied(settings);
    m_painting.setSettings(settings);
    m_canvas->setShowsNeighbours(settings.wraps);
    m_canvas->setSymmetry(settings.symmetry);
    showColours();
}

void EditPage::showColours() {
    if (!m_session.isOpen()) return;
    m_form->setColours(m_session.texture().palette(), m_palette->colour(), m_palette->other());
}

void EditPage::pickUp(Point cell) {
    const core::Texture& texture = shown();
    const Point place = wrapped(cell, texture.grid().size());
    if (place == cell || m_painting.settings().wraps) m_palette->pick(texture.grid().at(place));
}

void EditPage::showCell(Point cell) {
    const core::Texture& texture = shown();
    const Point place = wrapped(cell, texture.grid().size());
    const QString words = tr("Column %1, row %2: colour %3 · %4 pixels a cell")
                              .arg(place.x)
                              .arg(place.y)
                              .arg(texture.grid().at(place))
                              .arg(m_canvas->cellSide());
    m_cellWords->setText(words);
    m_canvas->setAccessibleDescription(words);
}

void EditPage::tryOperation() {
    const auto asked = m_form->asked();
    if (!asked || !m_session.isOpen()) {
        m_trying.stop();
        m_preview.reset();
        return showWork();
    }
    m_trying.start(
        [path = m_context.libraryPath, texture = m_session.texture(), operation = asked->operation](
            const core::Progress&) { return desktop::tryOperation(path, texture, operation); },
        [this](const core::Result<core::Texture>& tried) { showTried(tried); });
}

void EditPage::showTried(const core::Result<core::Texture>& tried) {
    if (!m_form->asked()) return;
    m_preview.reset();
    if (tried) {
        m_preview = *tried;
        m_form->allow();
    } else {
        m_form->refuse(shownError(tried.error()));
    }
    showWork();
}

void EditPage::applyOperation() {
    const auto asked = m_form->asked();
    if (!asked || !m_preview) return;
    core::Texture made = *m_preview;
    m_form->leave();
    m_session.change(asked->name, std::move(made));
}

const core::Texture& EditPage::shown() const {
    if (m_painting.isUnderWay()) return *m_painting.shown();
    return m_preview ? *m_preview : m_session.texture();
}

void EditPage::showWork() {
    m_either->setCurrentWidget(m_session.isOpen() ? m_work : static_cast<QWidget*>(m_nothing));
    showActions();
    if (!m_session.isOpen()) return m_canvas->setTexture(std::nullopt);
    const core::Texture& texture = m_session.texture();
    m_palette->setPalette(texture.palette());
    m_options->setSize(texture.grid().size());
    showColours();
    m_canvas->setTexture(shown());
    m_canvas->setFrame(m_painting.frame());
    m_costs->setTexture(shown());
    QString words = QStringLiteral("%1 · %2").arg(shownTitle(m_session.kept().text().title),
                                                  shownSize(shown().grid().size()));
    if (m_session.isChanged()) words += tr(" · not kept yet");
    m_words->setText(words);
}

void EditPage::showActions() {
    const auto* const button = qobject_cast<QPushButton*>(window()->focusWidget());
    const bool isOpen = m_session.isOpen();
    for (const ActionRow& row : actionTable()) {
        if (row.heard == Heard::InEdit) m_actions[row.id].setEnabled(isOpen);
    }
    const auto showStep = [this](ActionId id, const QString& name, const QString& text,
                                 const QString& what, bool isUsable) {
        m_actions[id].setEnabled(isUsable && !name.isEmpty());
        m_actions[id].setText(name.isEmpty() ? text : QStringLiteral("%1: %2").arg(text, name));
        m_actions[id].setStatusTip(name.isEmpty() ? what
                                                  : QStringLiteral("%1: %2").arg(what, name));
    };
    const bool isUnderWay = m_painting.isUnderWay();
    showStep(ActionId::Undo,
             isUnderWay ? toolName(m_tool)
             : isOpen   ? m_session.undoName()
                        : QString(),
             tr("&Undo"), tr("Take back"), isOpen);
    showStep(ActionId::Redo, isOpen ? m_session.redoName() : QString(), tr("&Redo"), tr("Do again"),
             isOpen && !isUnderWay);
    const bool isChanged = m_session.isChanged();
    m_actions[ActionId::Keep].setEnabled(isChanged || isUnderWay);
    m_actions[ActionId::TakeBackAll].setEnabled(isChanged);
    // A button with nothing more to do would hand the keys to the field behind it.
    if (button != nullptr && !button->isEnabled() && isAncestorOf(button)) m_canvas->setFocus();
}

void EditPage::recover() {
    m_recovering.start(
        [path = m_context.libraryPath](const core::Progress&) { return recoverInLibrary(path); },
        [this](const core::Result<Recovered>& answer) { showRecovered(answer); });
}

void EditPage::showRecovered(const core::Result<Recovered>& answer) {
    if (!answer) return say(shownError(answer.error()));
    QStringList lines;
    for (const tasks::RecoveredWork& each : *answer) {
        if (!each.damaged.empty()) {
            lines.append(tr("Work that was not kept cannot be read any more; it lies in %1.")
                             .arg(shownText(each.damaged.string())));
        } else if (each.kept && each.kept->isBeside) {
            lines.append(tr("%1 had changed meanwhile: it is a texture of its own, %2.")
                             .arg(shownTitle(each.title))
                             .arg(each.kept->id.value));
        } else if (each.kept) {
            lines.append(tr("%1 has it as its newest revision.").arg(shownTitle(each.title)));
        }
    }
    if (lines.isEmpty()) return;
    m_notices.showNotice({MarkKind::Caution,
                          tr("What was painted before the program ended without closing is kept:"),
                          lines});
    Q_EMIT recovered();
}

void EditPage::keep() {
    m_painting.settle();
    if (!m_session.isChanged() || m_keeping.isRunning()) return;
    const tasks::UnkeptWork work = unkept();
    m_keeping.start([path = m_context.libraryPath,
                     work](const core::Progress&) { return keepInLibrary(path, work); },
                    [this, work](const core::Result<tasks::KeptWork>& answer) {
                        kept(work, answer);
                        // More may have been done meanwhile, and another texture may wait.
                        const bool goesOn = isVisible() && !isOtherChosen();
                        if (answer && m_session.isChanged() && !goesOn) return keep();
                        if (isVisible()) takeUp();
                    });
}

tasks::UnkeptWork EditPage::unkept() const {
    return {m_session.id(), m_session.kept(), m_session.texture()};
}

void EditPage::kept(const tasks::UnkeptWork& work, const core::Result<tasks::KeptWork>& answer) {
    if (!answer) {
        // What another texture has already is not lost if one goes on.
        m_couldNotKeep = answer.error().kind != core::ErrorKind::AlreadyExists;
        return say(shownError(answer.error()));
    }
    m_couldNotKeep = false;
    m_hasWarned = false;
    const QString title = shownTitle(work.before.text().title);
    if (answer->isBeside) {
        say(tr("Another program has changed %1. Your work was kept as a texture of its own, %2.")
                .arg(title)
                .arg(answer->id.value));
    } else {
        m_notices.showNotice({MarkKind::Done, tr("Kept %1 as a new revision.").arg(title), {}});
    }
    m_costs->compareWith(work.after);
    m_session.markKept(answer->id, work.after);
}

}  // namespace pantile::desktop
