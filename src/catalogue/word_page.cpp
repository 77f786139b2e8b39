#include "catalogue/word_page.h"

#include <algorithm>

namespace pantile::catalogue {
namespace {

// Neither occurs in UTF-8, so no text reaches over the end of another.
constexpr char kEndOfField = '\xFE';
constexpr char kEndOfTexture = '\xFF';

/// The fields of one texture without its end, and without the ends of empty fields behind the last.
std::string recordOf(const WordTexts& folded) {
    std::string record;
    for (const std::string& text : folded) {
        if (&text != folded.data()) record += kEndOfField;
        std::copy_if(text.begin(), text.end(), std::back_inserter(record),
                     [](char c) { return c != kEndOfField && c != kEndOfTexture; });
    }
    record.erase(record.find_last_not_of(kEndOfField) + 1);
    return record;
}

/// The texture and the field at a place in a page, which only moves on.
class Reading {
public:
    explicit Reading(std::string_view page) : m_page(page) {}

    void moveTo(std::size_t target) {
        for (;;) {
            const std::size_t end = m_page.find(kEndOfTexture, m_at);
            if (end >= target) break;
            ++m_texture;
            m_field = 0;
            m_at = end + 1;
        }
        const auto from = m_page.begin() + static_cast<std::ptrdiff_t>(m_at);
        const auto to = m_page.begin() + static_cast<std::ptrdiff_t>(target);
        m_field += static_cast<unsigned>(std::count(from, to, kEndOfField));
        m_at = target;
    }

    std::size_t texture() const { return m_texture; }

    unsigned field() const { return m_field; }

    std::size_t endOfField() const {
        std::size_t end = m_at;
        while (end < m_page.size() && m_page[end] != kEndOfField && m_page[end] != kEndOfTexture) {
            ++end;
        }
        return end;
    }

private:
    std::string_view m_page;
    std::size_t m_at = 0;
    std::size_t m_texture = 0;
    unsigned m_field = 0;
};

}  // namespace

WordPage::WordPage(std::string_view bytes) {
    for (std::string& record : m_records) {
        const std::size_t end = std::min(bytes.find(kEndOfTexture), bytes.size());
        record = bytes.substr(0, end);
        bytes.remove_prefix(std::min(end + 1, bytes.size()));
    }
}

void WordPage::set(std::size_t place, const WordTexts& folded) {
    m_records[place] = recordOf(folded);
}

std::string WordPage::bytes() const {
    std::string all;
    std::size_t length = 0;
    for (const std::string& record : m_records) {
        all += record + kEndOfTexture;
        if (!record.empty()) length = all.size();
    }
    all.resize(length);
    return all;
}

WordHits hitsIn(std::string_view page, std::string_view folded) {
    WordHits hits{};
    Reading reading(page);
    for (std::size_t at = page.find(folded); at < page.size();) {
        reading.moveTo(at);
        // A forged page may hold more textures or fields than there are.
        if (reading.texture() >= WordPage::kTextures) break;
        if (reading.field() < hits.size()) {
            hits[reading.field()] |= std::uint64_t{1} << reading.texture();
        }
        at = page.find(folded, reading.endOfField());
    }
    return hits;
}

}  // namespace pantile::catalogue
