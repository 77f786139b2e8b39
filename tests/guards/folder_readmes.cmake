# Fails if a folder of src has no README.md, or one of more than 20 lines.
# usage: cmake -DSOURCE_DIR=... -P folder_readmes.cmake
cmake_minimum_required(VERSION 3.25)

file(GLOB folders RELATIVE ${SOURCE_DIR}/src ${SOURCE_DIR}/src/*)
list(REMOVE_ITEM folders CMakeLists.txt)
foreach(folder IN LISTS folders)
    set(readme ${SOURCE_DIR}/src/${folder}/README.md)
    if(NOT EXISTS ${readme})
        message(SEND_ERROR "src/${folder} has no README.md")
        continue()
    endif()
    file(STRINGS ${readme} lines)
    list(LENGTH lines count)
    if(count GREATER 20)
        message(SEND_ERROR "src/${folder}/README.md has ${count} lines; 20 are enough")
    endif()
endforeach()
