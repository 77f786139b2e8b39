#include "desktop/dialogs/convert_dialog.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/convert_form.h"
#include "desktop/views/dither_strip.h"
#include "desktop/views/fact_line.h"
#include "desktop/views/folding_splitter.h"
#include "desktop/views/picture_view.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/source_view.h"
#include "desktop/views/swatch_strip.h"
#include "desktop/views/tick_box.h"
#include "desktop/views/wrapped_row.h"

namespace pantile::desktop {

using core::Result;

namespace {

constexpr QSize kWantedSize{1232, 760};
constexpr int kFormWidth = 336;
constexpr int kFactsWidth = 272;
constexpr int kRoomForForm = 560;

QScrollArea* scrolled(QWidget* inside, const QString& name, QWidget* parent) {
    auto* const area = new QScrollArea(parent);
    area->setAccessibleName(name);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidgetResizable(true);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setWidget(inside);
    return area;
}

QString tenths(double number) {
    return QLocale().toString(number, 'f', 1);
}

// Less is not to be seen.
constexpr double kLeastDifference = 0.05;

QString differenceWords(const std::optional<tasks::Difference>& difference) {
    if (!difference || difference->plain < kLeastDifference)
        return ConvertDialog::tr("nothing: its own cells");
    return ConvertDialog::tr("%1, as seen %2")
        .arg(tenths(difference->plain))
        .arg(tenths(difference->perceived));
}

}  // namespace

ConvertDialog::ConvertDialog(RequestLook look, QThreadPool& pool, const Theme& theme,
                             QWidget* parent)
    : QDialog(parent),
      m_look(std::move(look)),
      m_sourceView(new SourceView(theme, this)),
      m_result(new PictureView(hatchOf(theme), this)),
      m_swatches(new SwatchStrip(theme, this)),
      m_dithers(new DitherStrip(theme, this)),
      m_form(new ConvertForm(m_look, theme, this)),
      m_state(new PlainLabel(this)),
      m_add(new QPushButton(counted("ConvertDialog", "Add %1 picture", "Add %1 pictures",
                                    std::ssize(m_look.pictures)),
                            this)),
      m_reading(pool),
      m_coarse(pool),
      m_exact(pool),
      m_costs(pool),
      m_sampling(pool) {
    setObjectName(QStringLiteral("convertDialog"));
    setWindowTitle(tr("Add Pictures"));
    setAttribute(Qt::WA_DeleteOnClose);
    m_sourceView->setTakesPart(m_look.pictures.size() == 1);
    auto* const both = new FoldingSplitter(kRoomForForm, this);
    both->addWidget(scrolled(makeWork(theme), tr("What comes of it"), both));
    both->addWidget(scrolled(m_form, tr("How"), both));
    both->setStretchFactor(0, 1);
    both->setStretchFactor(1, 0);
    both->setSizes({kWantedSize.width() - kFormWidth, kFormWidth});

    m_add->setObjectName(QStringLiteral("convertAdd"));
    m_add->setProperty("next", true);
    m_add->setDefault(true);
    auto* const cancel = new QPushButton(tr("Cancel"), this);
    cancel->setObjectName(QStringLiteral("convertCancel"));
    auto* const buttons = new QHBoxLayout;
    buttons->setContentsMargins(2 * kGap, kGap, 2 * kGap, kGap);
    buttons->setSpacing(kGap);
    buttons->addWidget(m_state, 1);
    buttons->addWidget(cancel);
    buttons->addWidget(m_add);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    layout->setSpacing(0);
    layout->addWidget(both, 1);
    layout->addLayout(buttons);
    resize(kWantedSize.boundedTo(parent->window()->size() - QSize(2 * kGap, 2 * kGap)));

    connect(m_add, &QPushButton::clicked, this, &QDialog::accept);
    connect(cancel, &QPushButton::clicked, this, &QDialog::reject);
    connect(m_form, &ConvertForm::changed, this, &ConvertDialog::readForm);
    connect(m_form, &ConvertForm::wordsChanged, this, [this] {
        if (const auto read = m_form->options()) {
            const tasks::PictureSettings settings = m_options.pictures;
            m_options = *read;
            m_options.pictures = settings;
            m_add->setEnabled(true);
        } else {
            m_add->setEnabled(false);
        }
    });
    connect(m_sourceView, &SourceView::partChanged, this, &ConvertDialog::readForm);
    connect(m_dithers, &DitherStrip::picked, this, &ConvertDialog::readForm);
    showPicture(0);
}

ConvertDialog::~ConvertDialog() {
    m_reading.stopAndWait();
    m_coarse.stopAndWait();
    m_exact.stopAndWait();
    m_costs.stopAndWait();
    m_sampling.stopAndWait();
}

QWidget* ConvertDialog::makeWork(const Theme& theme) {
    auto* const work = new QWidget(this);
    auto* const layout = new QVBoxLayout(work);
    layout->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, kGap);
    layout->setSpacing(kGap);
    layout->addWidget(makeWalk());

    m_result->setObjectName(QStringLiteral("convertedPicture"));
    m_result->setAccessibleName(tr("The texture that comes of it"));
    m_swatches->setObjectName(QStringLiteral("convertedColours"));
    auto* const left = new QVBoxLayout;
    left->setSpacing(kGap);
    left->addWidget(m_sourceView, 1);
    auto* const tiled = new TickBox(tr("Tiled"), theme, work);
    tiled->setObjectName(QStringLiteral("convertTiled"));
    connect(tiled, &QAbstractButton::toggled, this, [this](bool isTiled) {
        m_result->setRepeat(isTiled ? Repeat::ThreeByThree : Repeat::Once);
    });
    auto* const right = new QVBoxLayout;
    right->setSpacing(kGap);
    right->addWidget(m_result);
    right->addWidget(m_swatches);
    right->addStretch(1);
    auto* const pictures = new QHBoxLayout;
    pictures->setSpacing(2 * kGap);
    pictures->addLayout(left, 1);
    pictures->addLayout(right, 1);
    layout->addLayout(pictures, 1);

    auto* const facts = new WrappedRow(work);
    const auto addFacts = [&](const std::vector<std::pair<const char*, QString>>& lines) {
        auto* const column = new QWidget(facts);
        column->setFixedWidth(kFactsWidth);
        auto* const inside = new QVBoxLayout(column);
        inside->setContentsMargins({});
        inside->setSpacing(kGap / 2);
        for (const auto& [name, label] : lines)
            inside->addWidget(new FactLine(name, label, column));
        facts->add(column);
    };
    addFacts({{"convertedCells", tr("Cells")},
              {"convertedColourCount", tr("Colours")},
              {"convertedError", tr("Off by")}});
    addFacts({{"convertedDrawing", tr("Drawing")},
              {"convertedLoad", tr("In a load")},
              {"convertedCode", tr("As a code")}});
    facts->add(tiled);
    layout->addWidget(facts);
    layout->addWidget(m_dithers);
    return work;
}

QWidget* ConvertDialog::makeWalk() {
    auto* const walk = new QWidget(this);
    auto* const line = new QHBoxLayout(walk);
    line->setContentsMargins({});
    line->setSpacing(kGap);
    m_place = new PlainLabel(walk);
    m_place->setObjectName(QStringLiteral("convertPlace"));
    m_before = new QPushButton(tr("Before"), walk);
    m_before->setObjectName(QStringLiteral("convertBefore"));
    m_before->setAccessibleName(tr("The picture before"));
    m_next = new QPushButton(tr("Next"), walk);
    m_next->setObjectName(QStringLiteral("convertNext"));
    m_next->setAccessibleName(tr("The next picture"));
    auto* const all = new QPushButton(tr("Use all of it"), walk);
    all->setObjectName(QStringLiteral("convertUseAll"));
    const bool several = m_look.pictures.size() > 1;
    for (QPushButton* const each : {m_before, m_next}) {
        each->setAutoDefault(false);
        each->setVisible(several);
    }
    all->setAutoDefault(false);
    all->setVisible(!several);
    all->setEnabled(false);
    line->addWidget(m_place, 1);
    for (QPushButton* const each : {all, m_before, m_next}) line->addWidget(each);
    connect(m_before, &QPushButton::clicked, this, [this] { showPicture(m_index - 1); });
    connect(m_next, &QPushButton::clicked, this, [this] { showPicture(m_index + 1); });
    connect(all, &QPushButton::clicked, m_sourceView, &SourceView::useAll);
    connect(m_sourceView, &SourceView::partChanged, all,
            [this, all] { all->setEnabled(m_sourceView->part().has_value()); });
    return walk;
}

void ConvertDialog::setFact(const char* name, const QString& value) {
    findChild<FactLine*>(QLatin1String("fact_") + QLatin1String(name))->setValue(value);
}

void ConvertDialog::showPicture(int index) {
    m_index = index;
    const auto count = static_cast<int>(m_look.pictures.size());
    m_before->setEnabled(index > 0);
    m_next->setEnabled(index + 1 < count);
    const tasks::GatherInput& input = m_look.pictures[static_cast<std::size_t>(index)];
    const QString name = shownText(std::filesystem::path(input.path).filename().string());
    m_place->setText(count == 1 ? name : tr("%1, %2 of %3").arg(name).arg(index + 1).arg(count));
    m_state->setText(tr("Reading the picture"));
    dropRun();
    m_source.reset();
    m_wasEnlarged = false;
    m_reading.start([input](const core::Progress& progress) { return readSource(input, progress); },
                    [this](const Result<SourcePicture>& source) { showSource(source); });
}

void ConvertDialog::showSource(const Result<SourcePicture>& source) {
    if (!source) return refuse(source.error());
    m_source = std::make_shared<const SourcePicture>(*source);
    const core::Size size = source->picture->pixels.size;
    m_sourceView->setPicture(source->image, {size.width, size.height});
    // What was said of one picture is not undone by looking at another.
    if (m_look.pictures.size() == 1) m_form->setTitle(fromUtf8(source->title));
    readForm();
}

void ConvertDialog::readForm() {
    const auto options = m_form->options();
    m_add->setEnabled(options.has_value());
    if (!options) return;
    m_options = *options;
    m_options.pictures.dither = m_dithers->dither();
    if (const auto part = m_sourceView->part()) {
        m_options.pictures.part =
            picture::Rectangle{{part->x(), part->y()}, {part->width(), part->height()}};
    }
    if (m_source) preview();
}

// What still works for what was asked before may end, but is not looked at.
void ConvertDialog::dropRun() {
    m_isExact = false;
    ++m_run;
    m_coarse.stop();
    m_exact.stop();
    m_costs.stop();
    m_sampling.stop();
}

// A rough picture at once, then the one that will be added, then what it costs.
void ConvertDialog::preview() {
    dropRun();
    if (m_source->coarseBy == 1 || m_wasEnlarged) return previewExactly();
    m_coarse.start(
        [source = m_source, settings = m_options.pictures](const core::Progress& progress) {
            return coarsePreview(*source, settings, progress);
        },
        [this, run = m_run](const Result<tasks::RecognisedTexture>& made) {
            if (run != m_run) return;
            if (made) {
                show(made);
                m_state->setText(tr("Nearly so; being worked out"));
            }
            previewExactly();
        });
}

void ConvertDialog::previewExactly() {
    m_exact.start(
        [source = m_source, settings = m_options.pictures](const core::Progress& progress) {
            return exactPreview(*source, settings, progress);
        },
        [this, run = m_run](const Result<tasks::RecognisedTexture>& made) {
            if (run != m_run) return;
            if (!made) return refuse(made.error());
            m_isExact = true;
            m_wasEnlarged = made->enlargement.has_value();
            show(made);
            workOutCosts(*made);
            sampleDithers(SampleWork::Quick);
        });
}

void ConvertDialog::show(const Result<tasks::RecognisedTexture>& made) {
    const core::Texture& texture = made->texture;
    m_result->setTexture(texture);
    m_swatches->setTexture(texture);
    setFact("convertedCells", shownSize(texture.grid().size()));
    setFact("convertedColourCount", QLocale().toString(texture.coloursUsed()));
    setFact("convertedError", differenceWords(made->difference));
    m_state->setText(made->enlargement ? tr("It came enlarged %1 times; taken back to its cells")
                                             .arg(QLocale().toString(*made->enlargement))
                                       : QString());
    m_add->setEnabled(true);
    Q_EMIT previewed();
}

void ConvertDialog::workOutCosts(const tasks::RecognisedTexture& made) {
    m_costs.start(
        [made, defaults = m_look.defaults](const core::Progress& progress) {
            return previewCosts(made, defaults, progress);
        },
        [this, run = m_run](const Result<PreviewCosts>& costs) {
            if (run == m_run) showCosts(costs);
        });
}

void ConvertDialog::showCosts(const Result<PreviewCosts>& costs) {
    if (!costs) return;
    const QString unknown = tr("no canvas takes it");
    QString drawing = costs->estimate ? shownDuration(costs->estimate->drawMs) : unknown;
    if (costs->savedMs > 0)
        drawing += tr(", %1 saved by simplifying").arg(shownDuration(costs->savedMs));
    setFact("convertedDrawing", drawing);
    setFact("convertedLoad", costs->estimate ? shownBytes(costs->estimate->loadBytes) : unknown);
    setFact("convertedCode",
            tr("%1 characters").arg(QLocale().toString(qlonglong{costs->codeCharacters})));
}

void ConvertDialog::sampleDithers(SampleWork work) {
    m_sampling.start(
        [source = m_source, settings = m_options.pictures, defaults = m_look.defaults,
         work](const core::Progress& progress) {
            return ditherSamples(*source, settings, defaults, work, progress);
        },
        [this, work, run = m_run](const Result<std::vector<DitherSample>>& samples) {
            if (!samples || run != m_run) return;
            m_dithers->showSamples(*samples);
            if (work == SampleWork::Quick) sampleDithers(SampleWork::All);
        });
}

void ConvertDialog::refuse(const core::Error& error) {
    m_result->setTexture(std::nullopt);
    m_state->setText(shownError(error));
    // Of several pictures the others may do.
    m_add->setEnabled(m_look.pictures.size() > 1);
    Q_EMIT previewed();
}

}  // namespace pantile::desktop
