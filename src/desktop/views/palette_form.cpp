#include "desktop/views/palette_form.h"

#include <QLineEdit>
#include <QListWidget>
#include <QPainter>
#include <QPushButton>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/cell_picture.h"
#include "desktop/views/painted_parts.h"
#include "desktop/views/tick_box.h"
#include "desktop/views/wrapped_row.h"
#include "tasks/palette_file.h"

namespace pantile::desktop {

using catalogue::NamedPalette;
using core::Result;

namespace {

constexpr int kChipWidth = 40;
constexpr int kChipHeight = 20;
constexpr int kLeastListHeight = 160;

QIcon swatchIcon(core::Rgb8 colour, bool isUnpainted, const Theme& theme) {
    QPixmap picture(kChipWidth, kChipHeight);
    QPainter painter(&picture);
    const QRect all = picture.rect();
    fillSwatch(painter, all, isUnpainted ? std::nullopt : std::optional(colour), theme,
               theme.quietText);
    painter.setPen(toQColor(theme.edge));
    painter.drawRect(all.adjusted(0, 0, -1, -1));
    painter.end();
    QIcon icon(picture);
    // The platform would tint it.
    icon.addPixmap(picture, QIcon::Selected);
    return icon;
}

}  // namespace

PaletteForm::PaletteForm(AppContext& context, QWidget* parent)
    : CheckedForm(context.theme, parent),
      m_context(context),
      m_name(addLine("paletteName", tr("Name"))),
      m_list(new QListWidget(this)),
      m_hex(nullptr),
      m_unpainted(nullptr),
      m_reading(context.jobs),
      m_writing(context.jobs) {
    setObjectName(QStringLiteral("paletteForm"));
    m_list->setObjectName(QStringLiteral("paletteColours"));
    m_list->setAccessibleName(tr("Colours in their order"));
    m_list->setIconSize({kChipWidth, kChipHeight});
    m_list->setMinimumHeight(kLeastListHeight);
    addWidget({}, m_list);
    {
        const Silence silence(*this);
        m_hex = addLine("paletteHex", tr("Colour"));
        m_unpainted = addTick("paletteUnpainted", tr("Leave cells of this colour unpainted"));
    }
    m_hex->setPlaceholderText(QStringLiteral("#2f6f5e"));
    makeButtons();
    connectParts();
}

QPushButton* PaletteForm::makeButton(const char* name, const QString& words, const QString& tip) {
    auto* const button = new QPushButton(words, this);
    button->setObjectName(QLatin1String(name));
    button->setToolTip(tip);
    button->setAccessibleDescription(tip);
    button->setAutoDefault(false);
    return button;
}

void PaletteForm::makeButtons() {
    auto* const order = new WrappedRow(this);
    m_add = makeButton("paletteAdd", tr("Add colour"), tr("A colour behind this one (Insert)"));
    m_remove = makeButton("paletteRemove", tr("Take out"), tr("Take this colour out (Delete)"));
    m_earlier = makeButton("paletteEarlier", tr("Earlier"), tr("One place up (Alt+Up)"));
    m_later = makeButton("paletteLater", tr("Later"), tr("One place down (Alt+Down)"));
    m_pick = makeButton("palettePick", tr("Pick..."), tr("Choose this colour by eye"));
    for (QPushButton* const each : {m_pick, m_add, m_remove, m_earlier, m_later}) order->add(each);
    addWidget({}, order);
    auto* const files = new WrappedRow(this);
    m_import = makeButton("paletteImport", tr("Take from a file..."),
                          tr("A text with a colour a line, or a picture's colours"));
    m_export =
        makeButton("paletteExport", tr("Write to a file..."), tr("A text with one #RRGGBB a line"));
    files->add(m_import);
    files->add(m_export);
    addWidget({}, files);
}

void PaletteForm::connectParts() {
    connect(m_list, &QListWidget::currentRowChanged, this, &PaletteForm::showColour);
    connect(m_list, &QListWidget::itemActivated, this, &PaletteForm::pick);
    connect(m_hex, &QLineEdit::textEdited, this, &PaletteForm::readHex);
    connect(m_unpainted, &QCheckBox::clicked, this, [this](bool isOn) {
        m_transparent.reset();
        if (isOn) m_transparent = static_cast<core::PaletteIndex>(row());
        fill(row());
        tellChanged();
    });
    connect(m_add, &QPushButton::clicked, this, &PaletteForm::addColour);
    connect(m_remove, &QPushButton::clicked, this, &PaletteForm::removeColour);
    connect(m_earlier, &QPushButton::clicked, this, [this] { move(-1); });
    connect(m_later, &QPushButton::clicked, this, [this] { move(1); });
    connect(m_pick, &QPushButton::clicked, this, &PaletteForm::pick);
    connect(m_import, &QPushButton::clicked, this, &PaletteForm::takeFromFile);
    connect(m_export, &QPushButton::clicked, this, &PaletteForm::writeToFile);
    connect(this, &CheckedForm::changed, this, &PaletteForm::check);
    addButtonKey(*m_list, QKeySequence(Qt::Key_Insert), *m_add);
    addButtonKey(*m_list, QKeySequence(Qt::Key_Delete), *m_remove);
    addButtonKey(*m_list, QKeySequence(Qt::ALT | Qt::Key_Up), *m_earlier);
    addButtonKey(*m_list, QKeySequence(Qt::ALT | Qt::Key_Down), *m_later);
}

void PaletteForm::showPalette(const NamedPalette& palette, const ProfileKey& own,
                              const Profiles& known) {
    {
        const Silence silence(*this);
        const int current = own == m_own ? row() : 0;
        m_own = own;
        m_known = known;
        m_name->setText(fromUtf8(palette.name));
        m_colours.assign(palette.palette.colours().begin(), palette.palette.colours().end());
        m_transparent = palette.palette.transparent();
        fill(current);
    }
    check();
}

NamedPalette PaletteForm::palette() const {
    // The list never has fewer or more colours than a palette may have.
    return {m_name->text().toStdString(), *core::Palette::create(m_colours, m_transparent)};
}

int PaletteForm::row() const {
    return std::max(m_list->currentRow(), 0);
}

void PaletteForm::fill(int current) {
    const QSignalBlocker blocker(m_list);
    m_list->clear();
    for (std::size_t i = 0; i < m_colours.size(); ++i) {
        const bool isUnpainted = m_transparent == i;
        QString words = QStringLiteral("%1  %2").arg(i).arg(fromUtf8(core::toHex(m_colours[i])));
        if (isUnpainted) words = tr("%1, left unpainted").arg(words);
        new QListWidgetItem(swatchIcon(m_colours[i], isUnpainted, theme()), words, m_list);
    }
    m_list->setCurrentRow(std::clamp(current, 0, m_list->count() - 1));
    showColour();
}

void PaletteForm::showColour() {
    const Silence silence(*this);
    const auto index = static_cast<std::size_t>(row());
    if (index >= m_colours.size()) return;
    m_hex->setText(fromUtf8(core::toHex(m_colours[index])));
    m_unpainted->setChecked(m_transparent == index);
    setError(m_hex, {});
    const int count = static_cast<int>(m_colours.size());
    m_add->setEnabled(count < core::kMaxPaletteColours);
    m_remove->setEnabled(count > core::kMinPaletteColours);
    m_earlier->setEnabled(row() > 0);
    m_later->setEnabled(row() + 1 < count);
}

void PaletteForm::readHex() {
    const auto colour = core::parseHexColour(m_hex->text().trimmed().toStdString());
    setError(m_hex, colour ? Result<void>() : Result<void>(colour.error()));
    if (!colour) return tellChanged();
    m_colours[static_cast<std::size_t>(row())] = *colour;
    // What is being typed stays as it is.
    const QString typed = m_hex->text();
    const int cursor = m_hex->cursorPosition();
    fill(row());
    const Silence silence(*this);
    m_hex->setText(typed);
    m_hex->setCursorPosition(cursor);
    Q_EMIT changed();
}

void PaletteForm::setColour(core::Rgb8 colour) {
    m_colours[static_cast<std::size_t>(row())] = colour;
    fill(row());
    tellChanged();
}

void PaletteForm::addColour() {
    const int behind = row() + 1;
    const core::Rgb8 same = m_colours[static_cast<std::size_t>(row())];
    m_colours.insert(m_colours.begin() + behind, same);
    if (m_transparent && *m_transparent >= behind) ++*m_transparent;
    fill(behind);
    tellChanged();
}

void PaletteForm::removeColour() {
    const int gone = row();
    m_colours.erase(m_colours.begin() + gone);
    if (m_transparent == gone) {
        m_transparent.reset();
    } else if (m_transparent && *m_transparent > gone) {
        --*m_transparent;
    }
    fill(gone);
    tellChanged();
}

void PaletteForm::move(int by) {
    const int from = row();
    const int to = from + by;
    std::swap(m_colours[static_cast<std::size_t>(from)], m_colours[static_cast<std::size_t>(to)]);
    if (m_transparent == from) {
        m_transparent = static_cast<core::PaletteIndex>(to);
    } else if (m_transparent == to) {
        m_transparent = static_cast<core::PaletteIndex>(from);
    }
    fill(to);
    tellChanged();
}

void PaletteForm::pick() {
    const core::Rgb8 now = m_colours[static_cast<std::size_t>(row())];
    const auto picked = m_context.prompts.pickColour(window(), toQColor(now));
    if (!picked) return;
    const auto part = [](int value) { return static_cast<std::uint8_t>(value); };
    setColour({part(picked->red()), part(picked->green()), part(picked->blue())});
}

void PaletteForm::takeFromFile() {
    const QString file = m_context.prompts.pickPaletteFile(window());
    if (file.isEmpty()) return;
    const ProfileKey asked = m_own;
    picture::FreePaletteOptions options;
    options.most = static_cast<int>(m_colours.size());
    m_reading.start([path = std::filesystem::path(file.toStdString()), options](
                        const core::Progress&) { return tasks::paletteFromFile(path, options); },
                    [this, asked](const Result<core::Palette>& palette) {
                        if (!palette) {
                            Q_EMIT failed(palette.error());
                        } else if (asked == m_own) {
                            m_colours.assign(palette->colours().begin(), palette->colours().end());
                            m_transparent = palette->transparent();
                            fill(0);
                            tellChanged();
                        }
                    });
}

void PaletteForm::writeToFile() {
    const NamedPalette now = palette();
    const QString file = m_context.prompts.pickPaletteFileToWrite(
        window(), shownText(now.name).replace(QLatin1Char('/'), QLatin1Char('-')));
    if (file.isEmpty()) return;
    m_writing.start(
        [file, colours = now.palette](const core::Progress&) -> Result<QString> {
            PANTILE_RETURN_IF_ERROR(
                tasks::writePaletteFile(file.toStdString(), colours, tasks::IfExists::Replace));
            return file;
        },
        [this](const Result<QString>& done) {
            if (done) {
                Q_EMIT written(*done);
            } else {
                Q_EMIT failed(done.error());
            }
        });
}

void PaletteForm::stopAndWait() {
    m_reading.stopAndWait();
    m_writing.waitForDone();
}

void PaletteForm::setKnown(const ProfileKey& own, const Profiles& known) {
    m_own = own;
    m_known = known;
    check();
}

void PaletteForm::check() {
    setError(m_name, checkProfile(palette(), m_own, m_known));
}

}  // namespace pantile::desktop
