# Fails if a test uses a check of QtTest that GoogleTest does not notice.
# usage: cmake -DFOLDER=... -P no_qtest_checks.cmake
cmake_minimum_required(VERSION 3.25)

file(GLOB files ${FOLDER}/*.cpp ${FOLDER}/*.h)
list(LENGTH files count)
if(count LESS 5)
    message(FATAL_ERROR "only ${count} files were found: is FOLDER right?")
endif()
foreach(file IN LISTS files)
    file(STRINGS ${file} lines REGEX "(QVERIFY|QCOMPARE|QTRY_|QFAIL|QSKIP)")
    foreach(line IN LISTS lines)
        message(SEND_ERROR "${file}: ${line}")
    endforeach()
endforeach()
