#include "desktop/views/detail_pane.h"

#include <QAction>
#include <QLocale>
#include <QPushButton>
#include <QStringList>
#include <QVBoxLayout>

#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/fact_line.h"
#include "desktop/views/picture_view.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/revision_list.h"
#include "desktop/views/swatch_strip.h"
#include "desktop/views/wrapped_row.h"

namespace pantile::desktop {

namespace {

QString joined(const std::vector<std::string>& words) {
    QStringList shown;
    for (const std::string& word : words) shown.append(shownText(word));
    return shown.join(QStringLiteral(", "));
}

}  // namespace

DetailPane::DetailPane(const Actions& actions, const Theme& theme, QWidget* parent)
    : QScrollArea(parent) {
    setObjectName(QStringLiteral("detailPane"));
    setAccessibleName(tr("Details"));
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);

    auto* const bench = new QWidget(this);
    bench->setObjectName(QStringLiteral("bench"));
    auto* const layout = new QVBoxLayout(bench);
    layout->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, 2 * kGap);
    layout->setSpacing(kGap);
    m_words = new PlainLabel(bench);
    m_words->setObjectName(QStringLiteral("detailWords"));
    layout->addWidget(m_words);
    m_texturePart = makeTexturePart(actions, theme);
    layout->addWidget(m_texturePart);
    layout->addStretch();
    setWidget(bench);

    showWords(tr("Choose a texture to see everything about it here."));
}

QWidget* DetailPane::makeTexturePart(const Actions& actions, const Theme& theme) {
    auto* const part = new QWidget(this);
    auto* const layout = new QVBoxLayout(part);
    layout->setContentsMargins({});
    layout->setSpacing(kGap);

    m_title = new PlainLabel(part);
    m_title->setObjectName(QStringLiteral("detailTitle"));
    m_title->setFont(headingFont());
    layout->addWidget(m_title);
    m_picture = new PictureView(hatchOf(theme), part);
    layout->addWidget(m_picture);

    auto* const buttons = new WrappedRow(part);
    buttons->add(makeActionButton(actions[ActionId::EditWords], tr("Words"), part));
    buttons->add(makeActionButton(actions[ActionId::TouchUp], tr("Touch up"), part));
    buttons->add(makeActionButton(actions[ActionId::CopyCode], tr("Copy code"), part));
    buttons->add(makeActionButton(actions[ActionId::Tiled], tr("Tiled"), part));
    layout->addWidget(buttons);
    layout->addSpacing(kGap);
    connect(&actions[ActionId::Tiled], &QAction::toggled, m_picture, [this](bool tiled) {
        m_picture->setRepeat(tiled ? Repeat::ThreeByThree : Repeat::Once);
    });

    addFact(*layout, "drawing", tr("Drawing"));
    addFact(*layout, "load", tr("In a load"));
    addFact(*layout, "code", tr("As a code"));
    addFact(*layout, "cells", tr("Cells"));
    addFact(*layout, "colours", tr("Colours"));
    m_swatches = new SwatchStrip(theme, part);
    layout->addWidget(m_swatches);
    layout->addSpacing(kGap);
    addFact(*layout, "author", tr("Author"));
    addFact(*layout, "licence", tr("Licence"));
    addFact(*layout, "stars", tr("Stars"));
    addFact(*layout, "tags", tr("Tags"));
    addFact(*layout, "shelves", tr("Shelves"));
    addFact(*layout, "source", tr("Source"));
    addFact(*layout, "added", tr("Added"));
    addFact(*layout, "note", tr("Note"));
    layout->addSpacing(kGap);
    m_revisions = new RevisionList(part);
    layout->addWidget(m_revisions);
    connect(m_revisions, &RevisionList::revertAsked, this,
            [this](int revision) { Q_EMIT revertAsked(m_id, revision); });
    return part;
}

void DetailPane::showTexture(const TextureDetails& details) {
    const catalogue::TextureRow& row = details.record.row;
    const core::Texture& texture = details.record.texture;
    const QString title = shownTitle(row.title);
    m_title->setText(title);
    m_picture->setAccessibleName(tr("Picture of %1").arg(title));
    m_picture->setTexture(texture);
    m_swatches->setTexture(texture);

    const QString unknown = tr("not known: it fits no canvas");
    setFact("drawing", row.estimate ? shownDuration(row.estimate->drawMs) : unknown);
    setFact("load", row.estimate ? shownBytes(row.estimate->loadBytes) : unknown);
    setFact("code", tr("%1 characters").arg(QLocale().toString(qlonglong{details.codeCharacters})));
    setFact("cells", shownSize(row.size));
    setFact("colours",
            tr("%1 in use, %2 in the palette").arg(row.colours).arg(texture.palette().size()));
    setFact("author", row.author.empty() ? tr("not said") : shownText(row.author));
    setFact("licence", row.licence.empty() ? tr("not said") : shownText(row.licence));
    setFact("stars", shownStars(row.stars));
    setFact("tags", row.tags.empty() ? tr("none") : joined(row.tags));
    setFact("shelves", joined(row.shelves));
    setFact("source", shownText(row.source));
    setFact("added", shownTime(row.addedAt));
    setFact("note", shownLines(row.note));
    m_id = row.id;
    m_revisions->showRevisions(details.revisions);
    m_words->hide();
    m_texturePart->show();
}

void DetailPane::showWords(const QString& text) {
    m_texturePart->hide();
    m_words->setText(text);
    m_words->show();
}

void DetailPane::addFact(QVBoxLayout& layout, const char* name, const QString& label) {
    layout.addWidget(new FactLine(name, label, this));
}

void DetailPane::setFact(const char* name, const QString& value) {
    findChild<FactLine*>(QLatin1String("fact_") + QLatin1String(name))->setValue(value);
}

}  // namespace pantile::desktop
