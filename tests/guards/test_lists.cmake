# Fails if a test file of a folder does not stand in that folder's list, so that none goes stale.
# usage: cmake -DSOURCE_DIR=... -P test_lists.cmake
cmake_minimum_required(VERSION 3.25)

file(GLOB_RECURSE files RELATIVE ${SOURCE_DIR}/tests ${SOURCE_DIR}/tests/*_test.cpp)
list(LENGTH files count)
if(count LESS 10)
    message(FATAL_ERROR "only ${count} test files were found: is SOURCE_DIR right?")
endif()
foreach(file IN LISTS files)
    get_filename_component(folder ${file} DIRECTORY)
    get_filename_component(name ${file} NAME)
    file(READ ${SOURCE_DIR}/tests/${folder}/CMakeLists.txt list)
    if(NOT list MATCHES "[ \n]${name}")
        message(SEND_ERROR "tests/${file} is in no list and never runs")
    endif()
endforeach()
message(STATUS "${count} test files looked at")
