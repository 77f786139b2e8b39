#include "cli/changed_answer.h"

#include <ostream>

#include "cli/json.h"

namespace pantile::cli {

Outcome answerChanged(Session& session, std::int64_t changed, std::string_view sentence) {
    if (session.json) {
        printJson(session.out, {{"changed", jsonNumber(changed)}});
    } else {
        session.out << sentence << ".\n";
    }
    return Outcome::Done;
}

}  // namespace pantile::cli
