#include "cli/number_list.h"

#include <algorithm>
#include <string>

#include "cli/arguments.h"

namespace pantile::cli {

core::Result<std::vector<int>> parseNumberList(std::string_view what, std::string_view text,
                                               const NumberListRule& rule) {
    const auto count = static_cast<std::size_t>(std::count(text.begin(), text.end(), ',')) + 1;
    if (count < rule.fewest || count > rule.most) {
        return core::Error{core::ErrorKind::Usage,
                           std::string(what) + " cannot take " + std::to_string(count) +
                               (count == 1 ? " number" : " numbers"),
                           "write " + std::string(what) + " " + std::string(rule.form)};
    }
    std::vector<int> numbers;
    for (std::string_view rest = text; numbers.size() < count;) {
        const std::size_t comma = rest.find(',');
        PANTILE_ASSIGN_OR_RETURN(const auto number,
                                 parseNumber(std::string(what) + "'s number", rest.substr(0, comma),
                                             rule.leastValue, rule.mostValue));
        numbers.push_back(static_cast<int>(number));
        if (comma != std::string_view::npos) rest.remove_prefix(comma + 1);
    }
    return numbers;
}

}  // namespace pantile::cli
