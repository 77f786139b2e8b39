#include "desktop/views/convert_form.h"

#include <QCompleter>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QRegularExpression>

#include "core/texture.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/number_slider.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/tick_box.h"
#include "picture/merge_alike.h"
#include "picture/strays.h"

namespace pantile::desktop {

using core::Result;

namespace {

constexpr int kAsTheCanvas = core::kMinPaletteColours - 1;  // Below the least number of colours.

QStringList wordsIn(const QString& text) {
    static const QRegularExpression kBetween(QStringLiteral("[\\s,]+"));
    return text.split(kBetween, Qt::SkipEmptyParts);
}

std::optional<std::string> saidIn(const QLineEdit* line) {
    const QString text = line->text().trimmed();
    if (text.isEmpty()) return std::nullopt;
    return text.toStdString();
}

QStringList shownNames(const std::vector<std::string>& names) {
    QStringList shown;
    for (const std::string& name : names) shown.append(shownText(name));
    return shown;
}

}  // namespace

ConvertForm::ConvertForm(const RequestLook& look, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_look(look), m_theme(theme), m_grid(new QGridLayout(this)) {
    setObjectName(QStringLiteral("convertForm"));
    m_grid->setContentsMargins(2 * kGap, kGap, 2 * kGap, 2 * kGap);
    m_grid->setHorizontalSpacing(kGap);
    m_grid->setVerticalSpacing(kGap);
    m_grid->setColumnStretch(1, 1);
    m_error = new PlainLabel(this);
    m_error->setObjectName(QStringLiteral("convertFormError"));
    m_grid->addWidget(m_error, 0, 0, 1, 2);
    m_error->hide();
    makeGridPart();
    makeColourPart();
    makeLightPart();
    makeWordPart();
    m_grid->setRowStretch(m_grid->rowCount(), 1);
}

void ConvertForm::makeGridPart() {
    addHeading(tr("Grid"));
    QStringList canvases(
        tr("None, up to %1").arg(shownSize({tasks::kUsualGridSide, tasks::kUsualGridSide})));
    for (const core::Canvas& canvas : m_look.defaults.canvases)
        canvases.append(tr("%1, %2").arg(shownText(canvas.name)).arg(shownSize(canvas.size)));
    m_canvas = addChoice("convertCanvas", tr("Canvas"), canvases);
    m_fit = addChoice("convertFit", tr("Fit"),
                      {tr("As suits the picture"), tr("Cover the grid"), tr("Show all of it"),
                       tr("Stretch to the grid"), tr("A pixel is a cell")});
    m_anchor = addChoice("convertAnchor", tr("Place"),
                         {tr("Top left"), tr("Top"), tr("Top right"), tr("Left"), tr("Centre"),
                          tr("Right"), tr("Bottom left"), tr("Bottom"), tr("Bottom right")});
    m_anchor->setCurrentIndex(static_cast<int>(picture::Anchor::Centre));
    m_scale = addChoice("convertScale", tr("Scaling"),
                        {tr("Mean of the pixels"), tr("Sharp (Lanczos)"), tr("Nearest pixel")});
    m_undoEnlarged = addTick("convertEnlarged", tr("Take enlarged art back to its cells"));
    m_undoEnlarged->setChecked(true);
}

void ConvertForm::makeColourPart() {
    addHeading(tr("Colours"));
    m_colours = addNumber("convertColours", tr("Colours"), kAsTheCanvas, core::kMaxPaletteColours,
                          kAsTheCanvas);
    m_colours->setLeastWords(tr("as fits"));
    m_strength = addNumber("convertStrength", tr("Dither, %"), 0, 100, 100);
    m_merge = addNumber("convertMerge", tr("Join alike"), 0, picture::kMergeUnits / 5, 0);
    m_simplify = addNumber("convertSimplify", tr("Simplify"), 0, picture::kMaxSimplifyLevel, 0);
    m_pinned = addLine("convertPinned", tr("Keep colours"), tr("#2f6f5e #f2efe4"));
    m_background = addLine("convertBackground", tr("Lay on"), tr("#f2efe4, else open"));
    m_alpha = addNumber("convertAlpha", tr("Open below"), 1, 255,
                        tasks::PictureSettings{}.alphaThreshold);
}

void ConvertForm::makeLightPart() {
    addHeading(tr("Light"));
    m_levels = addTick("convertLevels", tr("Stretch from black to white"));
    m_gamma = addNumber("convertGamma", tr("Middle tones, %"), 10, 1000, 100);
    m_brightness = addNumber("convertBrightness", tr("Brightness"), -100, 100, 0);
    m_contrast = addNumber("convertContrast", tr("Contrast"), -100, 100, 0);
    m_saturation = addNumber("convertSaturation", tr("Saturation"), -100, 100, 0);
    m_sharpen = addNumber("convertSharpen", tr("Sharpen"), 0, 100, 0);
}

void ConvertForm::makeWordPart() {
    addHeading(tr("Words"));
    if (m_look.pictures.size() == 1) m_title = addLine("convertTitle", tr("Title"), {});
    m_tags = addLine("convertTags", tr("Tags"), tr("kelp wet"));
    m_shelf = addLine("convertShelf", tr("Shelf"), {});
    auto* const shelves = new QCompleter(shownNames(m_look.shelves), m_shelf);
    shelves->setCaseSensitivity(Qt::CaseInsensitive);
    m_shelf->setCompleter(shelves);
    m_author = addLine("convertAuthor", tr("Author"), {});
    m_licence = addLine("convertLicence", tr("Licence"), {});
    m_source = addLine("convertSource", tr("Source"), tr("else the file's name"));
    for (QLineEdit* const line : {m_title, m_tags, m_shelf, m_author, m_licence, m_source}) {
        if (line == nullptr) continue;
        line->disconnect(SIGNAL(textChanged(QString)));
        connect(line, &QLineEdit::textChanged, this, &ConvertForm::wordsChanged);
    }
}

void ConvertForm::setTitle(const QString& title) {
    if (m_title != nullptr) m_title->setText(title);
}

void ConvertForm::addHeading(const QString& words) {
    auto* const label = new QLabel(words, this);
    QFont bold = label->font();
    bold.setBold(true);
    label->setFont(bold);
    label->setContentsMargins(0, kGap, 0, 0);
    m_grid->addWidget(label, m_grid->rowCount(), 0, 1, 2);
}

void ConvertForm::addField(const QString& label, QWidget* field) {
    const int row = m_grid->rowCount();
    auto* const words = new QLabel(label, this);
    words->setBuddy(field);
    m_grid->addWidget(words, row, 0);
    m_grid->addWidget(field, row, 1);
}

ChoiceBox* ConvertForm::addChoice(const char* name, const QString& label,
                                  const QStringList& choices) {
    auto* const box = new ChoiceBox(m_theme, this);
    box->setObjectName(QLatin1String(name));
    box->setAccessibleName(label);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(8);
    box->addItems(choices);
    addField(label, box);
    connect(box, &QComboBox::currentIndexChanged, this, &ConvertForm::changed);
    return box;
}

NumberSlider* ConvertForm::addNumber(const char* name, const QString& label, int least, int most,
                                     int usual) {
    auto* const number = new NumberSlider(name, label, {least, most, usual}, this);
    addField(label, number);
    connect(number, &NumberSlider::changed, this, &ConvertForm::changed);
    return number;
}

TickBox* ConvertForm::addTick(const char* name, const QString& label) {
    auto* const tick = new TickBox(label, m_theme, this);
    tick->setObjectName(QLatin1String(name));
    m_grid->addWidget(tick, m_grid->rowCount(), 0, 1, 2);
    connect(tick, &QAbstractButton::toggled, this, &ConvertForm::changed);
    return tick;
}

QLineEdit* ConvertForm::addLine(const char* name, const QString& label, const QString& example) {
    auto* const line = new QLineEdit(this);
    line->setObjectName(QLatin1String(name));
    line->setAccessibleName(label);
    line->setPlaceholderText(example);
    addField(label, line);
    connect(line, &QLineEdit::textChanged, this, &ConvertForm::changed);
    return line;
}

std::optional<tasks::GatherOptions> ConvertForm::options() {
    Result<tasks::GatherOptions> options = read();
    m_error->setVisible(!options);
    if (options) return *std::move(options);
    m_error->setText(shownError(options.error()));
    return std::nullopt;
}

Result<tasks::GatherOptions> ConvertForm::read() const {
    tasks::GatherOptions options;
    tasks::PictureSettings& settings = options.pictures;
    if (const int canvas = m_canvas->currentIndex() - 1; canvas >= 0) {
        settings.canvas = m_look.defaults.canvases[static_cast<std::size_t>(canvas)];
        options.canvas = settings.canvas->name;
    }
    if (m_fit->currentIndex() > 0)
        settings.fit = static_cast<picture::Fit>(m_fit->currentIndex() - 1);
    settings.anchor = static_cast<picture::Anchor>(m_anchor->currentIndex());
    settings.scale = static_cast<picture::Scale>(m_scale->currentIndex());
    settings.enlarged = m_undoEnlarged->isChecked() ? tasks::Enlarged::Undo : tasks::Enlarged::Keep;
    if (m_colours->value() != kAsTheCanvas) settings.colours = m_colours->value();
    settings.strength = m_strength->value() / 100.0;
    settings.mergeWithin = m_merge->value();
    settings.simplify = m_simplify->value();
    settings.alphaThreshold = static_cast<std::uint8_t>(m_alpha->value());
    settings.adjustments = {m_levels->isChecked(), m_gamma->value() / 100.0, m_brightness->value(),
                            m_contrast->value(),   m_saturation->value(),    m_sharpen->value()};
    PANTILE_RETURN_IF_ERROR(readColours(settings));
    readWords(options);
    for (const std::string& tag : options.tags) PANTILE_RETURN_IF_ERROR(core::checkTag(tag));
    core::TextureText text;
    text.title = options.title.value_or("");
    text.author = options.author.value_or("");
    text.licence = options.licence.value_or("");
    text.source = options.source.value_or("");
    PANTILE_RETURN_IF_ERROR(core::checkTextureText(text));
    if (!options.shelf.empty())
        PANTILE_RETURN_IF_ERROR(core::checkName("shelf name", options.shelf));
    return options;
}

Result<void> ConvertForm::readColours(tasks::PictureSettings& settings) const {
    for (const QString& word : wordsIn(m_pinned->text())) {
        PANTILE_ASSIGN_OR_RETURN(const core::Rgb8 colour, core::parseHexColour(word.toStdString()));
        settings.pinned.push_back(colour);
    }
    if (const auto text = saidIn(m_background)) {
        PANTILE_ASSIGN_OR_RETURN(settings.background, core::parseHexColour(*text));
    }
    return {};
}

void ConvertForm::readWords(tasks::GatherOptions& options) const {
    if (m_title != nullptr) options.title = saidIn(m_title);
    options.author = saidIn(m_author);
    options.licence = saidIn(m_licence);
    options.source = saidIn(m_source);
    options.shelf = saidIn(m_shelf).value_or("");
    for (const QString& tag : wordsIn(m_tags->text())) options.tags.push_back(tag.toStdString());
}

}  // namespace pantile::desktop
