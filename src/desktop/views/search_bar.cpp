#include "desktop/views/search_bar.h"

#include <algorithm>
#include <array>

#include <QFontDatabase>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

#include "catalogue/query_parser.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/choice_box.h"
#include "desktop/views/mark.h"
#include "desktop/views/plain_label.h"
#include "desktop/views/search_field.h"

namespace pantile::desktop {

using catalogue::SortDirection;
using catalogue::SortField;
using catalogue::SortKey;

namespace {

constexpr int kPauseMs = 150;

struct Order {
    const char* words;
    SortKey key;
    const char* name;  ///< As catalogue::parseSortKey reads it.
};

const std::array<Order, 10> kOrders = {{
    {QT_TRANSLATE_NOOP("SearchBar", "Best match, newest"), {SortField::Relevance, {}}, "relevance"},
    {QT_TRANSLATE_NOOP("SearchBar", "Title"), {SortField::Title, {}}, "title"},
    {QT_TRANSLATE_NOOP("SearchBar", "Newest first"), {SortField::Added, {}}, "added"},
    {QT_TRANSLATE_NOOP("SearchBar", "Oldest first"),
     {SortField::Added, SortDirection::Reversed},
     "-added"},
    {QT_TRANSLATE_NOOP("SearchBar", "Most stars"), {SortField::Stars, {}}, "stars"},
    {QT_TRANSLATE_NOOP("SearchBar", "Last changed"), {SortField::Changed, {}}, "changed"},
    {QT_TRANSLATE_NOOP("SearchBar", "Quickest drawing"), {SortField::Draw, {}}, "draw"},
    {QT_TRANSLATE_NOOP("SearchBar", "Fewest bytes"), {SortField::Bytes, {}}, "bytes"},
    {QT_TRANSLATE_NOOP("SearchBar", "Fewest colours"), {SortField::Colours, {}}, "colours"},
    {QT_TRANSLATE_NOOP("SearchBar", "Smallest grid"), {SortField::Size, {}}, "size"},
}};

}  // namespace

SearchBar::SearchBar(const Theme& theme, QWidget* parent)
    : QWidget(parent), m_field(new SearchField(this)), m_order(new ChoiceBox(theme, this)) {
    m_field->setObjectName(QStringLiteral("searchField"));
    m_field->setAccessibleName(tr("Search"));
    m_field->setPlaceholderText(tr("Search: kelp, tag:foam, draw<90s ..."));
    m_field->setClearButtonEnabled(true);
    m_order->setObjectName(QStringLiteral("order"));
    m_order->setAccessibleName(tr("Order"));
    m_order->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_order->setMinimumContentsLength(14);
    for (const Order& order : kOrders) m_order->addItem(tr(order.words));

    auto* const line = new QHBoxLayout;
    line->setObjectName(QStringLiteral("searchLine"));
    line->setSpacing(kGap);
    line->addWidget(m_field, 1);
    line->addWidget(m_order);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins({});
    layout->setSpacing(kGap);
    layout->addLayout(line);
    makeErrorPart(theme);
    layout->addWidget(m_errorPart);

    m_pause.setSingleShot(true);
    m_pause.setInterval(kPauseMs);
    connect(&m_pause, &QTimer::timeout, this, &SearchBar::readField);
    connect(m_field, &QLineEdit::textChanged, &m_pause, qOverload<>(&QTimer::start));
    connect(m_field, &SearchField::left, this, &SearchBar::left);
    connect(m_order, &QComboBox::currentIndexChanged, this, &SearchBar::asked);
    readField();
}

SortKey SearchBar::sortKey() const {
    return kOrders.at(static_cast<std::size_t>(std::max(m_order->currentIndex(), 0))).key;
}

bool SearchBar::isEmpty() const {
    return m_field->text().trimmed().isEmpty();
}

QString SearchBar::text() const {
    return m_field->text().trimmed();
}

std::string SearchBar::sortName() const {
    return kOrders.at(static_cast<std::size_t>(std::max(m_order->currentIndex(), 0))).name;
}

void SearchBar::ask(const QString& query, const QString& sort) {
    const auto* const order = std::find_if(kOrders.begin(), kOrders.end(), [&](const Order& each) {
        return !sort.isEmpty() && sort == QLatin1String(each.name);
    });
    if (order != kOrders.end()) m_order->setCurrentIndex(static_cast<int>(order - kOrders.begin()));
    m_field->setText(query);
    readField();
}

void SearchBar::setNames(const QStringList& tags, const QStringList& shelves) {
    m_field->setNames(tags, shelves);
}

void SearchBar::focusField() {
    m_field->setFocus(Qt::ShortcutFocusReason);
    m_field->selectAll();
}

void SearchBar::clear() {
    m_field->clear();
}

void SearchBar::addToLine(QWidget* widget) {
    setTabOrder(m_order, widget);
    findChild<QHBoxLayout*>(QStringLiteral("searchLine"))->addWidget(widget);
}

void SearchBar::makeErrorPart(const Theme& theme) {
    m_errorPart = new QWidget(this);
    m_errorPart->setObjectName(QStringLiteral("searchError"));
    m_message = new PlainLabel(m_errorPart);
    m_message->setObjectName(QStringLiteral("searchErrorMessage"));
    m_place = new QLabel(m_errorPart);
    m_place->setObjectName(QStringLiteral("searchErrorPlace"));
    m_place->setTextFormat(Qt::PlainText);
    m_place->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
    m_place->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);

    auto* const words = new QVBoxLayout;
    words->setSpacing(kGap / 2);
    words->addWidget(m_message);
    words->addWidget(m_place);
    auto* const line = new QHBoxLayout(m_errorPart);
    line->setContentsMargins({});
    line->setSpacing(kGap);
    line->addWidget(new Mark(MarkKind::Caution, theme, m_errorPart), 0, Qt::AlignTop);
    line->addLayout(words, 1);
    m_errorPart->hide();
}

void SearchBar::readField() {
    auto query = catalogue::parseQuery(m_field->text().toStdString());
    if (!query) {
        showError(query.error());
        return;
    }
    m_errorPart->hide();
    m_query = *std::move(query);
    Q_EMIT asked();
}

void SearchBar::showError(const core::Error& error) {
    // The hint is the line, a caret below the place, and last what to write instead.
    const std::size_t end = error.hint.rfind('\n');
    const bool hasPlace = end != std::string::npos;
    core::Error words = error;
    if (hasPlace) words.hint = error.hint.substr(end + 1);
    m_message->setText(shownError(words));
    m_place->setText(hasPlace ? shownLines(error.hint.substr(0, end)) : QString());
    m_place->setVisible(hasPlace);
    m_errorPart->show();
}

}  // namespace pantile::desktop
