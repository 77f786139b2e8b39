#include "desktop/dialogs/profiles_dialog.h"

#include <QAction>
#include <QHeaderView>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "desktop/profile_work.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/board_form.h"
#include "desktop/views/canvas_form.h"
#include "desktop/views/folding_splitter.h"
#include "desktop/views/palette_form.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/screen_picture.h"
#include "desktop/views/slots_picture.h"
#include "desktop/views/wrapped_row.h"

namespace pantile::desktop {

namespace {

constexpr QSize kUsualDialog{1160, 720};
constexpr int kListWidth = 240;
constexpr int kNarrowList = 168;
constexpr int kRoomForList = 900;
constexpr int kProfileFormWidth = 392;
constexpr int kRoomForPicture = 640;
constexpr int kTrialDelayMs = 250;  // After the last change that was typed.
constexpr int kProfileNameRole = Qt::UserRole;
constexpr int kProfileKindRole = Qt::UserRole + 1;

QString kindHeading(ProfileKind kind) {
    switch (kind) {
        case ProfileKind::Canvas:
            return ProfilesDialog::tr("Canvases");
        case ProfileKind::Board:
            return ProfilesDialog::tr("Boards");
        case ProfileKind::Palette:
            return ProfilesDialog::tr("Palettes");
    }
    return {};
}

ProfileKind kindOf(const QTreeWidgetItem* item) {
    return static_cast<ProfileKind>(item->data(0, kProfileKindRole).toInt());
}

ProfileKey keyOfItem(const QTreeWidgetItem* item) {
    return {kindOf(item), item->data(0, kProfileNameRole).toString().toStdString()};
}

bool isHeading(const QTreeWidgetItem* item) {
    return item->parent() == nullptr;
}

QScrollArea* scrollFor(QWidget* inside, QWidget* parent) {
    auto* const area = new QScrollArea(parent);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidgetResizable(true);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setWidget(inside);
    return area;
}

}  // namespace

ProfilesDialog::ProfilesDialog(AppContext& context, Actions& actions, const ChosenTextures& chosen,
                               ProfileWork& work, QWidget* parent)
    : QDialog(parent),
      m_chosen(chosen),
      m_work(work),
      m_tree(new QTreeWidget(this)),
      m_forms(new QStackedWidget(this)),
      m_pictures(new QStackedWidget(this)),
      m_canvasForm(new CanvasForm(context.theme, this)),
      m_boardForm(new BoardForm(context.theme, this)),
      m_paletteForm(new PaletteForm(context, this)),
      m_screen(new ScreenPicture(context.theme, this)),
      m_slots(new SlotsPicture(context.theme, this)),
      m_facts(new PlainLabel(this)),
      m_cost(new PlainLabel(this)),
      m_mark(new Mark(MarkKind::Done, context.theme, this)),
      m_state(new PlainLabel(this)),
      m_add(new QPushButton(tr("Add"), this)),
      m_copy(new QPushButton(tr("Copy"), this)),
      m_remove(new QPushButton(tr("Remove"), this)),
      m_takeBack(new QPushButton(tr("Take back"), this)),
      m_keep(new QPushButton(tr("Keep"), this)) {
    setObjectName(QStringLiteral("profilesDialog"));
    setWindowTitle(tr("Canvases, Boards and Palettes"));
    setAttribute(Qt::WA_DeleteOnClose);
    auto* const right = new FoldingSplitter(kRoomForPicture, this);
    right->addWidget(makePicturePane());
    right->addWidget(makeFormPane());
    right->setStretchFactor(0, 1);
    right->setStretchFactor(1, 0);
    right->setSizes({kUsualDialog.width() - kListWidth - kProfileFormWidth, kProfileFormWidth});
    auto* const body = new QHBoxLayout;
    body->setSpacing(0);
    body->addWidget(makeListPane());
    body->addWidget(right, 1);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    layout->setSpacing(0);
    layout->addLayout(body, 1);
    layout->addWidget(makeFoot(actions));
    resize(kUsualDialog.boundedTo(parent->window()->size() - QSize(2 * kGap, 2 * kGap)));
    for (const ActionId id : {ActionId::UndoInLibrary, ActionId::RedoInLibrary})
        addAction(&actions[id]);
    connectParts();
    renewList();
}

ProfilesDialog::~ProfilesDialog() {
    m_paletteForm->stopAndWait();
}

QWidget* ProfilesDialog::makeListPane() {
    auto* const pane = new QWidget(this);
    const bool hasRoom = parentWidget()->window()->width() >= kRoomForList;
    pane->setFixedWidth(hasRoom ? kListWidth : kNarrowList);
    m_tree->setObjectName(QStringLiteral("profileTree"));
    m_tree->setAccessibleName(tr("Canvases, boards and palettes"));
    m_tree->setHeaderHidden(true);
    m_tree->setRootIsDecorated(false);
    m_tree->setItemsExpandable(false);
    m_tree->ensurePolished();  // The height of its rows is asked for once.
    m_tree->setUniformRowHeights(true);
    m_tree->setIndentation(0);
    m_tree->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_tree->setTextElideMode(Qt::ElideMiddle);
    m_add->setObjectName(QStringLiteral("profileAdd"));
    m_copy->setObjectName(QStringLiteral("profileCopy"));
    m_remove->setObjectName(QStringLiteral("profileRemove"));
    m_add->setToolTip(tr("A new one of the same kind (Insert)"));
    m_copy->setToolTip(tr("A new one like this (Ctrl+D)"));
    m_remove->setToolTip(tr("Remove this one; undo brings it back (Delete)"));
    auto* const buttons = new WrappedRow(pane);
    for (QPushButton* const each : {m_add, m_copy, m_remove}) {
        each->setAutoDefault(false);
        buttons->add(each);
    }
    auto* const layout = new QVBoxLayout(pane);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(m_tree, 1);
    auto* const around = new QVBoxLayout;
    around->setContentsMargins(kGap, kGap, kGap, 0);
    around->addWidget(buttons);
    layout->addLayout(around);
    return pane;
}

QWidget* ProfilesDialog::makePicturePane() {
    auto* const pane = new QWidget(this);
    m_facts->setObjectName(QStringLiteral("profileFacts"));
    m_cost->setObjectName(QStringLiteral("profileCost"));
    m_cost->setForegroundRole(QPalette::PlaceholderText);
    m_pictures->addWidget(m_screen);
    m_pictures->addWidget(m_slots);
    auto* const layout = new QVBoxLayout(pane);
    layout->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, kGap);
    layout->setSpacing(kGap);
    layout->addWidget(m_pictures, 1);
    layout->addWidget(m_facts);
    layout->addWidget(m_cost);
    return pane;
}

QWidget* ProfilesDialog::makeFormPane() {
    auto* const pane = new QWidget(this);
    for (QWidget* const each :
         {static_cast<QWidget*>(m_canvasForm), static_cast<QWidget*>(m_boardForm),
          static_cast<QWidget*>(m_paletteForm)})
        m_forms->addWidget(scrollFor(each, m_forms));
    m_takeBack->setObjectName(QStringLiteral("profileTakeBack"));
    m_takeBack->setToolTip(tr("Back to what the library has"));
    m_takeBack->setAutoDefault(false);
    m_keep->setObjectName(QStringLiteral("profileKeep"));
    m_keep->setProperty("next", true);
    m_keep->setDefault(true);
    auto* const buttons = new QHBoxLayout;
    buttons->setContentsMargins(2 * kGap, kGap, 2 * kGap, 0);
    buttons->setSpacing(kGap);
    buttons->addStretch();
    buttons->addWidget(m_takeBack);
    buttons->addWidget(m_keep);
    auto* const layout = new QVBoxLayout(pane);
    layout->setContentsMargins({});
    layout->setSpacing(0);
    layout->addWidget(m_forms, 1);
    layout->addLayout(buttons);
    return pane;
}

QWidget* ProfilesDialog::makeFoot(Actions& actions) {
    auto* const foot = new QWidget(this);
    m_state->setObjectName(QStringLiteral("profileState"));
    m_mark->hide();
    auto* const close = new QPushButton(tr("Close"), foot);
    close->setObjectName(QStringLiteral("profileClose"));
    QPushButton* const undo = makeActionButton(actions[ActionId::UndoInLibrary], tr("Undo"), foot);
    QPushButton* const redo = makeActionButton(actions[ActionId::RedoInLibrary], tr("Redo"), foot);
    auto* const line = new QHBoxLayout(foot);
    line->setContentsMargins(2 * kGap, kGap, 2 * kGap, kGap);
    line->setSpacing(kGap);
    line->addWidget(m_mark);
    line->addWidget(m_state, 1);
    for (QPushButton* const each : {undo, redo, close}) {
        each->setAutoDefault(false);
        line->addWidget(each);
    }
    connect(close, &QPushButton::clicked, this, &QDialog::accept);
    return foot;
}

void ProfilesDialog::connectParts() {
    connect(m_tree, &QTreeWidget::currentItemChanged, this, &ProfilesDialog::choose);
    connect(m_add, &QPushButton::clicked, this, &ProfilesDialog::add);
    connect(m_copy, &QPushButton::clicked, this, &ProfilesDialog::copy);
    connect(m_remove, &QPushButton::clicked, this, &ProfilesDialog::remove);
    connect(m_keep, &QPushButton::clicked, this, &ProfilesDialog::keep);
    connect(m_takeBack, &QPushButton::clicked, this, &ProfilesDialog::takeBack);
    for (CheckedForm* const form :
         {static_cast<CheckedForm*>(m_canvasForm), static_cast<CheckedForm*>(m_boardForm),
          static_cast<CheckedForm*>(m_paletteForm)})
        connect(form, &CheckedForm::changed, this, &ProfilesDialog::readForm);
    connect(m_paletteForm, &PaletteForm::failed, this,
            [this](const core::Error& error) { say(MarkKind::Caution, shownError(error)); });
    connect(m_paletteForm, &PaletteForm::written, this, [this](const QString& file) {
        say(MarkKind::Done, tr("Wrote %1.").arg(shownText(file.toStdString())));
    });
    connect(&m_work, &ProfileWork::profilesChanged, this, &ProfilesDialog::renewList);
    connect(&m_work, &ProfileWork::done, this,
            [this](const QString& words) { say(MarkKind::Done, words); });
    connect(&m_work, &ProfileWork::failed, this, [this](const RefusedProfile& refused) {
        say(MarkKind::Caution, shownError(refused.error));
        if (!refused.asked) return;
        // To be mended: as it was asked for, under the name that the library has.
        m_drafts.insert_or_assign(refused.key, *refused.asked);
        if (m_shown == keyOf(*refused.asked)) m_shown = refused.key;
    });
    addButtonKey(*m_tree, QKeySequence(Qt::Key_Insert), *m_add);
    addButtonKey(*m_tree, QKeySequence(Qt::CTRL | Qt::Key_D), *m_copy);
    addButtonKey(*m_tree, QKeySequence(Qt::Key_Delete), *m_remove);
    auto* const rename = new QAction(m_tree);
    rename->setShortcut(Qt::Key_F2);
    rename->setShortcutContext(Qt::WidgetShortcut);
    m_tree->addAction(rename);
    connect(rename, &QAction::triggered, this, [this] {
        auto* const name = m_forms->currentWidget()->findChild<QLineEdit*>();
        name->setFocus(Qt::ShortcutFocusReason);
        name->selectAll();
    });
    m_trialTimer.setSingleShot(true);
    m_trialTimer.setInterval(kTrialDelayMs);
    connect(&m_trialTimer, &QTimer::timeout, this, &ProfilesDialog::startTrial);
    connect(&m_work, &ProfileWork::triedOut, this, &ProfilesDialog::showTrial);
}

void ProfilesDialog::addHeading(ProfileKind kind) {
    auto* const heading = new QTreeWidgetItem(m_tree, {kindHeading(kind)});
    heading->setData(0, kProfileKindRole, static_cast<int>(kind));
    QFont bold = m_tree->font();
    bold.setBold(true);
    heading->setFont(0, bold);
    std::map<QString, ProfileKey> rows;  // Sorted as people read.
    const auto addRow = [&](const ProfileKey& key) {
        if (key.kind == kind) rows.emplace(fromUtf8(key.name).toCaseFolded(), key);
    };
    for (const Profile& each : m_work.profiles().all) addRow(keyOf(each));
    for (const auto& [key, draft] : m_drafts) addRow(key);
    for (const auto& [words, key] : rows) {
        const QString name = shownText(key.name);
        const bool isDraft = m_drafts.contains(key);
        auto* const item =
            new QTreeWidgetItem(heading, {isDraft ? tr("%1 (not kept)").arg(name) : name});
        item->setData(0, kProfileNameRole, fromUtf8(key.name));
        item->setData(0, kProfileKindRole, static_cast<int>(kind));
        item->setToolTip(0, name);
    }
}

// Rebuilt as a whole: there are few of them.
void ProfilesDialog::renewList() {
    QTreeWidgetItem* const before = m_tree->currentItem();
    const ProfileKind kind = before == nullptr ? ProfileKind::Canvas : kindOf(before);
    const int place =
        before == nullptr || isHeading(before) ? 0 : before->parent()->indexOfChild(before);
    {
        const QSignalBlocker blocker(m_tree);
        m_tree->clear();
        for (const ProfileKind each :
             {ProfileKind::Canvas, ProfileKind::Board, ProfileKind::Palette})
            addHeading(each);
        m_tree->expandAll();
    }
    if (m_shown && wanted(*m_shown) != nullptr) {
        select(*m_shown);
        const auto now = inForm();
        if (!now || *now != *wanted(*m_shown)) {
            showForm();
        } else {
            tellKnown();
        }
        showButtons();
        return;
    }
    // Gone: its neighbour takes its place.
    m_shown.reset();
    QTreeWidgetItem* const heading = m_tree->topLevelItem(static_cast<int>(kind));
    const int last = heading->childCount() - 1;
    QTreeWidgetItem* const next = last < 0 ? heading : heading->child(std::min(place, last));
    m_tree->setCurrentItem(next);
}

void ProfilesDialog::select(const ProfileKey& key) {
    const QTreeWidgetItem* const heading = m_tree->topLevelItem(static_cast<int>(key.kind));
    for (int i = 0; i < heading->childCount(); ++i) {
        if (keyOfItem(heading->child(i)) != key) continue;
        const QSignalBlocker blocker(m_tree);
        m_tree->setCurrentItem(heading->child(i));
    }
}

ProfileKind ProfilesDialog::currentKind() const {
    const QTreeWidgetItem* const item = m_tree->currentItem();
    return item == nullptr ? ProfileKind::Canvas : kindOf(item);
}

const Profile* ProfilesDialog::wanted(const ProfileKey& key) const {
    const auto draft = m_drafts.find(key);
    return draft == m_drafts.end() ? m_work.profiles().find(key) : &draft->second;
}

void ProfilesDialog::choose(QTreeWidgetItem* item) {
    if (item == nullptr) return;
    const std::optional<ProfileKey> next =
        isHeading(item) ? std::nullopt : std::optional(keyOfItem(item));
    if (m_shown && next != m_shown) {
        const ProfileKey before = *m_shown;
        m_shown = next;
        // Keeping rebuilds the list, with what is shown next chosen in it.
        const auto draft = m_drafts.find(before);
        if (draft != m_drafts.end() && checkProfile(draft->second, before, m_work.profiles())) {
            const Profile profile = draft->second;
            m_drafts.erase(draft);
            m_work.change(before, profile);
        }
    }
    m_shown = next;
    showForm();
    showButtons();
}

void ProfilesDialog::showForm() {
    const Profile* const profile = m_shown ? wanted(*m_shown) : nullptr;
    m_forms->setCurrentIndex(static_cast<int>(currentKind()));
    m_forms->setEnabled(profile != nullptr);
    if (profile == nullptr) return showPicture();
    const Profiles& known = m_work.profiles();
    m_isFilling = true;
    if (const auto* const canvas = std::get_if<core::Canvas>(profile))
        m_canvasForm->showCanvas(*canvas, *m_shown, known);
    if (const auto* const board = std::get_if<core::Board>(profile))
        m_boardForm->showBoard(*board, *m_shown, known);
    if (const auto* const palette = std::get_if<catalogue::NamedPalette>(profile))
        m_paletteForm->showPalette(*palette, *m_shown, known);
    m_isFilling = false;
    showPicture();
}

// What is right depends on the other names.
void ProfilesDialog::tellKnown() {
    const Profiles& known = m_work.profiles();
    if (m_shown->kind == ProfileKind::Canvas) m_canvasForm->setKnown(*m_shown, known);
    if (m_shown->kind == ProfileKind::Board) m_boardForm->setKnown(*m_shown, known);
    if (m_shown->kind == ProfileKind::Palette) m_paletteForm->setKnown(*m_shown, known);
}

std::optional<Profile> ProfilesDialog::inForm() const {
    if (!m_shown) return std::nullopt;
    switch (m_shown->kind) {
        case ProfileKind::Canvas:
            return m_canvasForm->canvas();
        case ProfileKind::Board:
            return m_boardForm->board();
        case ProfileKind::Palette:
            return m_paletteForm->palette();
    }
    return std::nullopt;
}

void ProfilesDialog::readForm() {
    const auto now = inForm();
    if (!now || m_isFilling) return;
    const bool wasDraft = m_drafts.contains(*m_shown);
    const Profile* const stored = m_work.profiles().find(*m_shown);
    if (stored != nullptr && *stored == *now) {
        m_drafts.erase(*m_shown);
    } else {
        m_drafts.insert_or_assign(*m_shown, *now);
    }
    if (wasDraft != m_drafts.contains(*m_shown)) {
        const QString name = shownText(m_shown->name);
        m_tree->currentItem()->setText(0, wasDraft ? name : tr("%1 (not kept)").arg(name));
    }
    showPicture();
    showButtons();
}

// What is not right yet leaves the picture as it is.
void ProfilesDialog::showPicture() {
    const Profile* const profile = m_shown ? wanted(*m_shown) : nullptr;
    m_pictures->setVisible(profile != nullptr && m_shown->kind != ProfileKind::Palette);
    m_pictures->parentWidget()->setVisible(m_pictures->isVisibleTo(m_pictures->parentWidget()));
    m_facts->clear();
    m_cost->clear();
    if (profile == nullptr) return;
    if (const auto* const canvas = std::get_if<core::Canvas>(profile)) {
        m_pictures->setCurrentWidget(m_screen);
        if (core::checkUnnamedCanvas(*canvas)) {
            m_screen->showCanvas(*canvas);
            if (barLiesOnGrid(screenPlaces(*canvas)))
                m_facts->setText(
                    tr("Caution: the palette bar lies on the grid. Move one of them, "
                       "or strokes will pick colours."));
        }
    }
    if (const auto* const board = std::get_if<core::Board>(profile)) {
        m_pictures->setCurrentWidget(m_slots);
        if (core::checkBoard(*board)) m_slots->showBoard(*board);
    }
    m_facts->setVisible(!m_facts->text().isEmpty());
    m_trialTimer.start();
}

void ProfilesDialog::startTrial() {
    const auto now = inForm();
    const bool decides = now && m_shown->kind != ProfileKind::Palette && !m_chosen.ids().empty();
    if (!decides || !checkProfile(*now, *m_shown, m_work.profiles())) return;
    if (!m_work.tryOut(m_chosen.ids().front(), *now)) m_trialTimer.start();
}

void ProfilesDialog::showTrial(const TrialCost& tried) {
    if (inForm() != tried.profile) return;
    const QString title = shownTitle(tried.title);
    m_cost->setText(tried.cost ? tr("%1 under it: %2").arg(title, shownCost(tried.cost))
                               : tr("%1 does not fit it, or its colours do not.").arg(title));
}

void ProfilesDialog::showButtons() {
    const bool isDraft = m_shown && m_drafts.contains(*m_shown);
    m_takeBack->setEnabled(isDraft);
    m_keep->setEnabled(isDraft && checkProfile(m_drafts.at(*m_shown), *m_shown, m_work.profiles()));
    m_copy->setEnabled(m_shown.has_value());
    m_remove->setEnabled(m_shown.has_value());
}

void ProfilesDialog::keep() {
    if (!m_shown || !m_drafts.contains(*m_shown)) return;
    const ProfileKey key = *m_shown;
    const Profile profile = m_drafts.at(key);
    if (!checkProfile(profile, key, m_work.profiles())) return;
    m_drafts.erase(key);
    m_shown = keyOf(profile);
    // What another program removed meanwhile is made again.
    if (m_work.profiles().find(key) == nullptr) {
        m_work.add(profile);
    } else {
        m_work.change(key, profile);
    }
}

void ProfilesDialog::takeBack() {
    if (!m_shown) return;
    m_drafts.erase(*m_shown);
    renewList();
}

void ProfilesDialog::add() {
    const Profile profile = newProfile(currentKind(), m_work.profiles());
    keep();
    m_shown = keyOf(profile);
    m_work.add(profile);
}

void ProfilesDialog::copy() {
    const Profile* const now = m_shown ? wanted(*m_shown) : nullptr;
    if (now == nullptr) return;
    const Profile profile = copyOf(*now, m_work.profiles());
    keep();
    m_shown = keyOf(profile);
    m_work.add(profile);
}

void ProfilesDialog::remove() {
    if (!m_shown) return;
    const ProfileKey key = *m_shown;
    m_drafts.erase(key);
    if (m_work.profiles().find(key) == nullptr) return renewList();
    m_work.remove(key);
}

void ProfilesDialog::say(MarkKind kind, const QString& words) {
    m_mark->setKind(kind);
    m_mark->show();
    m_state->setText(words);
}

void ProfilesDialog::done(int result) {
    keep();
    if (m_drafts.empty()) return QDialog::done(result);
    m_shown = m_drafts.begin()->first;
    select(*m_shown);
    showForm();
    showButtons();
    say(MarkKind::Caution,
        tr("%1 is not right yet. Mend what is marked, or take it back; then close.")
            .arg(shownText(m_shown->name)));
}

}  // namespace pantile::desktop
