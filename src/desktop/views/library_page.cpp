#include "desktop/views/library_page.h"

#include <QAction>
#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QMimeData>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QStringList>
#include <QVBoxLayout>

#include "desktop/gather_words.h"
#include "desktop/models/texture_model.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/action_button.h"
#include "desktop/views/detail_pane.h"
#include "desktop/views/empty_wall.h"
#include "desktop/views/filter_pane.h"
#include "desktop/views/heading.h"
#include "desktop/views/notice_bar.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/search_bar.h"
#include "desktop/views/texture_grid_view.h"
#include "desktop/views/words_page.h"
#include "tasks/sample_library.h"

namespace pantile::desktop {

namespace {

constexpr int kBenchWidth = 344;
constexpr int kFilterWidth = 184;
constexpr int kRoomForFilters = 960;
constexpr int kRoomForBoth = 660;  // With less width the details take the place of the wall.

QWidget* makeNothingFound(const Actions& actions, QWidget* parent) {
    auto* const page =
        new WordsPage(actions[ActionId::ShowAll], LibraryPage::tr("Show all"), parent);
    page->setObjectName(QStringLiteral("nothingFound"));
    page->setWords(LibraryPage::tr("No texture is what the search asks for."));
    return page;
}

}  // namespace

LibraryPage::LibraryPage(AppContext& context, Actions& actions, ChosenTextures& chosen,
                         NoticeBar& notices, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_actions(actions),
      m_chosen(chosen),
      m_notices(notices),
      m_model(new TextureModel(context.library, this)),
      m_search(new SearchBar(context.theme, this)),
      m_counts(new PlainLabel(this)),
      m_grid(new TextureGridView(*m_model, context.theme,
                                 TilePictures(context.library, hatchOf(context.theme)), this)),
      m_details(new DetailPane(actions, context.theme, this)),
      m_organising(new LibraryActions(context, actions, chosen, notices, *m_search, this)),
      m_emptyWall(new EmptyWall(actions, context.theme, this)),
      m_nothingFound(makeNothingFound(actions, this)),
      m_wall(new QStackedWidget(this)),
      m_addButton(makeNextButton(actions[ActionId::AddPictures], tr("Add pictures"), m_search)),
      m_adder(context, this),
      m_gatherer(context.libraryPath, context.jobs, this),
      m_watch(context.library, this),
      m_finding(context.jobs),
      m_reading(context.jobs),
      m_encoding(context.jobs) {
    makeLayout();
    // Before anything follows them: whether there is room is known only once there is a width.
    m_actions[ActionId::Details].setChecked(true);
    m_actions[ActionId::Filters].setChecked(true);
    connectParts();
    connectActions();
    find();
}

void LibraryPage::makeLayout() {
    QLabel* const title = makeHeading(tr("Library"), this);
    m_counts->setObjectName(QStringLiteral("counts"));
    m_counts->setForegroundRole(QPalette::PlaceholderText);
    m_addButton->setObjectName(QStringLiteral("headAddButton"));
    m_search->addToLine(m_addButton);
    setTabOrder(m_addButton, m_organising->filterPane());
    setTabOrder(m_organising->filterPane(), m_grid);
    // In line with what stands in the field, also while an error stands below that.
    title->setMinimumHeight(m_search->sizeHint().height());

    auto* const headLine = new QHBoxLayout;
    headLine->setSpacing(2 * kGap);
    headLine->addWidget(title, 0, Qt::AlignTop);
    headLine->addWidget(m_search, 1);
    auto* const head = new QVBoxLayout;
    head->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, kGap);
    head->setSpacing(kGap);
    head->addLayout(headLine);
    head->addWidget(m_counts);

    for (QWidget* const each : {static_cast<QWidget*>(m_grid), m_emptyWall, m_nothingFound})
        m_wall->addWidget(each);
    auto* const both = new QSplitter(this);
    both->setHandleWidth(1);
    both->setChildrenCollapsible(false);
    both->addWidget(m_organising->filterPane());
    both->addWidget(m_wall);
    both->addWidget(m_details);
    both->setStretchFactor(0, 0);
    both->setStretchFactor(1, 1);
    both->setStretchFactor(2, 0);
    both->setSizes({kFilterWidth, 2 * kBenchWidth, kBenchWidth});
    m_organising->filterPane()->setMinimumWidth(kFilterWidth * 3 / 4);
    m_details->setMinimumWidth(kBenchWidth * 3 / 4);

    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    layout->setSpacing(0);
    layout->addLayout(head);
    layout->addWidget(both, 1);
}

void LibraryPage::connectParts() {
    connect(m_search, &SearchBar::asked, this, &LibraryPage::find);
    connect(m_search, &SearchBar::left, m_grid, qOverload<>(&QWidget::setFocus));
    connect(m_grid, &TextureGridView::chosenChanged, this, &LibraryPage::chosen);
    connect(&m_watch, &LibraryWatch::changed, this, &LibraryPage::renew);
    connect(m_organising, &LibraryActions::libraryChanged, this, &LibraryPage::renew);
    connect(m_organising, &LibraryActions::filtersRead, this,
            [this](const LibraryFilters& filters) {
                QStringList tags;
                QStringList shelves;
                for (const auto& tag : filters.tags) tags.append(fromUtf8(tag.name));
                for (const auto& shelf : filters.shelves) shelves.append(fromUtf8(shelf.name));
                m_search->setNames(tags, shelves);
                Q_EMIT shelvesRead(shelves);
            });
    connect(m_details, &DetailPane::revertAsked, m_organising, &LibraryActions::revert);
    connect(&m_notices, &NoticeBar::stopAsked, &m_gatherer, &Gatherer::stop);
    connect(&m_adder, &Adder::ready, &m_gatherer, &Gatherer::add);
    connect(&m_adder, &Adder::failed, this, [this](const core::Error& error) {
        m_notices.showNotice({MarkKind::Caution, shownError(error), {}});
    });
    connect(&m_gatherer, &Gatherer::finished, this, &LibraryPage::gathered);
    connect(&m_gatherer, &Gatherer::progressed, this,
            [this](int done, int total, const QString& what) {
                const QString words = total == 0 ? tr("Adding")
                                                 : tr("Adding %1 of %2: %3")
                                                       .arg(std::min(done + 1, total))
                                                       .arg(total)
                                                       .arg(shownText(what.toStdString()));
                m_notices.showProgress(done, total, words);
            });
}

void LibraryPage::connectActions() {
    const auto on = [this](ActionId id, auto&& slot) {
        connect(&m_actions[id], &QAction::triggered, this, slot);
    };
    on(ActionId::AddPictures, [this] {
        const QStringList files = m_context.prompts.pickFilesToAdd(window());
        if (!files.isEmpty()) gather(gatherRequest(files), AskFor::EveryPicture);
    });
    on(ActionId::AddFolder, [this] {
        const QString folder = m_context.prompts.pickFolderToAdd(window());
        if (!folder.isEmpty()) gather(gatherRequest(QStringList(folder)));
    });
    const auto samples = tasks::samplesFolder();
    m_actions[ActionId::AddSamples].setEnabled(samples.has_value());
    on(ActionId::AddSamples, [this, samples] {
        GatherRequest request =
            gatherRequest(QStringList(QString::fromStdString(samples->string())));
        request.options = tasks::sampleOptions();
        gather(std::move(request));
    });
    on(ActionId::Paste, [this] {
        auto request = gatherRequest(*QGuiApplication::clipboard()->mimeData());
        if (request) {
            gather(*std::move(request));
        } else {
            m_notices.showNotice(
                {MarkKind::Caution, tr("The clipboard holds no picture, file or text."), {}});
        }
    });
    on(ActionId::CopyCode, [this] { copyCode(); });
    on(ActionId::Find, [this] { m_search->focusField(); });
    on(ActionId::ShowAll, [this] { m_search->clear(); });
    // Edit goes by these as well, while it is shown.
    on(ActionId::Larger, [this] {
        if (isVisible()) m_grid->showLarger();
    });
    on(ActionId::Smaller, [this] {
        if (isVisible()) m_grid->showSmaller();
    });
    connect(m_grid, &QAbstractItemView::activated, &m_actions[ActionId::TouchUp],
            &QAction::trigger);
    connect(&m_actions[ActionId::Details], &QAction::toggled, this, &LibraryPage::arrange);
    connect(&m_actions[ActionId::Filters], &QAction::toggled, this, &LibraryPage::arrange);
    m_grid->addAction(&m_actions[ActionId::CopyCode]);
    for (const ActionId id :
         {ActionId::EditWords, ActionId::NoStars, ActionId::OneStar, ActionId::TwoStars,
          ActionId::ThreeStars, ActionId::FourStars, ActionId::FiveStars, ActionId::PutOnShelf,
          ActionId::TakeFromShelf, ActionId::PutInLoad, ActionId::Remove, ActionId::Recover})
        m_grid->addAction(&m_actions[id]);
    m_grid->addAction(&m_actions[ActionId::Paste]);
}

void LibraryPage::gather(GatherRequest request, AskFor asked) {
    m_adder.take(std::move(request), asked);
}

void LibraryPage::stopAndWait() {
    m_finding.stopAndWait();
    m_reading.stopAndWait();
    m_encoding.stopAndWait();
    m_adder.stopAndWait();
    m_organising->finishAll();
    m_gatherer.stopAndWait();
}

void LibraryPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void LibraryPage::find() {
    const FindRequest request{m_context.libraryPath, m_search->query(), m_search->sortKey()};
    m_finding.start([request](const core::Progress&) { return runFind(request); },
                    [this](const core::Result<FindAnswer>& answer) { showFound(answer); });
}

void LibraryPage::showFound(const core::Result<FindAnswer>& answer) {
    if (!answer) {
        m_notices.showNotice({MarkKind::Caution, shownError(answer.error()), {}});
        return;
    }
    m_all = answer->all;
    m_shownDetails.reset();
    m_grid->showIds(answer->ids);
    if (!m_toSelect.empty()) m_grid->selectIds(std::exchange(m_toSelect, {}));
    QWidget* const wall = !answer->ids.empty()                ? static_cast<QWidget*>(m_grid)
                          : m_all == 0 && m_search->isEmpty() ? m_emptyWall
                                                              : m_nothingFound;
    m_wall->setCurrentWidget(wall);
    // The empty wall has one of its own.
    m_addButton->setVisible(wall != m_emptyWall);
    arrange();
    Q_EMIT found();
}

void LibraryPage::showCounts() {
    const auto found = std::ssize(m_model->ids());
    const QString all = counted("LibraryPage", "%1 texture", "%1 textures", m_all);
    QString words = found == m_all ? all : tr("%1 of %2").arg(found).arg(all);
    if (const auto chosen = std::ssize(m_chosen.ids()); chosen > 1)
        words += tr(" · %1 chosen: %2").arg(chosen).arg(m_chosen.titleWords());
    m_counts->setText(words);
}

void LibraryPage::tellChosen() {
    std::vector<core::TextureId> selected = m_grid->selectedIds();
    QStringList titles;
    for (std::size_t i = 0; i < std::min(ChosenTextures::kMostTitles, selected.size()); ++i) {
        const auto* row = m_model->textureRow(m_model->rowOf(selected[i]).value_or(-1));
        if (row != nullptr) titles.append(shownTitle(row->title));
    }
    m_chosen.choose(std::move(selected), std::move(titles));
}

void LibraryPage::chosen() {
    tellChosen();
    const std::vector<core::TextureId>& selected = m_chosen.ids();
    m_actions.setHasSelection(!selected.empty());
    showCounts();
    if (selected.empty()) {
        m_reading.stop();
        m_shownDetails.reset();
        m_details->showWords(tr("Choose a texture to see everything about it here."));
        return;
    }
    const core::TextureId id = m_grid->currentId().value_or(selected.front());
    if (m_shownDetails == id) return;
    m_shownDetails = id;
    m_reading.start([path = m_context.libraryPath, id](
                        const core::Progress& progress) { return readDetails(path, id, progress); },
                    [this](const core::Result<TextureDetails>& details) { showDetails(details); });
}

void LibraryPage::showDetails(const core::Result<TextureDetails>& details) {
    if (!m_shownDetails) return;
    if (details) {
        m_details->showTexture(*details);
    } else {
        m_details->showWords(shownError(details.error()));
    }
}

void LibraryPage::gathered(const core::Result<tasks::GatherReport>& report) {
    m_notices.showNotice(gatherNotice(report));
    if (report) {
        for (const tasks::GatheredTexture& each : report->added) m_toSelect.push_back(each.id);
        if (report->added.empty()) {
            for (const tasks::KnownTexture& each : report->known) m_toSelect.push_back(each.id);
        }
    }
    renew();
}

void LibraryPage::renew() {
    find();
    m_organising->renew();
    Q_EMIT libraryChanged();
}

void LibraryPage::copyCode() {
    const std::vector<core::TextureId> ids = m_grid->selectedIds();
    m_encoding.start(
        [path = m_context.libraryPath, ids](const core::Progress& progress) {
            return codesToPaste(path, ids, progress);
        },
        [this, count = std::ssize(ids)](const core::Result<QString>& codes) {
            if (!codes) {
                m_notices.showNotice({MarkKind::Caution, shownError(codes.error()), {}});
                return;
            }
            QGuiApplication::clipboard()->setText(*codes);
            const QString copied =
                counted("LibraryPage", "Copied %1 code", "Copied %1 codes", count);
            m_notices.showNotice(
                {MarkKind::Done, tr("%1, %2 characters.").arg(copied).arg(codes->size()), {}});
        });
}

// The details stand beside the wall, or take its place where there is no room for both.
void LibraryPage::arrange() {
    const bool hasRoom = width() >= kRoomForBoth;
    if (hasRoom != m_hasRoomForBoth) {
        m_hasRoomForBoth = hasRoom;
        m_actions[ActionId::Details].setChecked(hasRoom);
    }
    const bool hasRoomForFilters = width() >= kRoomForFilters;
    if (hasRoomForFilters != m_hasRoomForFilters) {
        m_hasRoomForFilters = hasRoomForFilters;
        m_actions[ActionId::Filters].setChecked(hasRoomForFilters);
    }
    m_organising->filterPane()->setVisible(m_actions[ActionId::Filters].isChecked() &&
                                           m_wall->currentWidget() != m_emptyWall);
    const bool hasTextures = m_wall->currentWidget() == m_grid;
    const bool showsDetails = hasTextures && m_actions[ActionId::Details].isChecked();
    m_details->setVisible(showsDetails);
    m_wall->setVisible(hasRoom || !showsDetails);
}

}  // namespace pantile::desktop
