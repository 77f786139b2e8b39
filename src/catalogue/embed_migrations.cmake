# Writes schema/NNNN_name.sql into a C++ source, in the order of their numbers.
#   cmake -DSCHEMA_FOLDER=... -DOUTPUT=... -P embed_migrations.cmake
cmake_minimum_required(VERSION 3.25)

file(GLOB files RELATIVE ${SCHEMA_FOLDER} ${SCHEMA_FOLDER}/*.sql)
list(SORT files)
set(rows "")
set(expected 0)
foreach(file IN LISTS files)
    if(NOT file MATCHES "^([0-9][0-9][0-9][0-9])_([a-z0-9_]+)\\.sql$")
        message(FATAL_ERROR "${file}: a migration is called NNNN_name.sql")
    endif()
    set(digits ${CMAKE_MATCH_1})
    set(name ${CMAKE_MATCH_2})
    math(EXPR expected "${expected} + 1")
    string(REGEX REPLACE "^0+" "" number ${digits})
    if(NOT number EQUAL expected)
        message(FATAL_ERROR "${file}: migrations are numbered 1, 2, 3 ...; ${expected} is missing")
    endif()
    file(READ ${SCHEMA_FOLDER}/${file} sql)
    string(APPEND rows "    {${number}, \"${name}\", R\"pantile_sql(${sql})pantile_sql\"},\n")
endforeach()
file(WRITE ${OUTPUT} "// Made from schema/*.sql by embed_migrations.cmake.

#include <array>

#include \"catalogue/migrations.h\"

namespace pantile::catalogue {
namespace {

constexpr std::array<Migration, ${expected}> kMigrations = {{
${rows}}};

}  // namespace

std::span<const Migration> embeddedMigrations() {
    return kMigrations;
}

}  // namespace pantile::catalogue
")
