# The manual pages and what shells complete, made from the program's own table of options whenever
# the program is built; src/install has where they go.
file(GLOB FINGERTURN_GUIDE_SOURCES CONFIGURE_DEPENDS ${CMAKE_CURRENT_LIST_DIR}/*.cpp)
add_executable(fingerturn_guides ${FINGERTURN_GUIDE_SOURCES})
fingerturn_compile_by_rooms(fingerturn_guides)
target_link_libraries(fingerturn_guides PRIVATE fingerturn_cli)

set(FINGERTURN_GUIDES ${PROJECT_BINARY_DIR}/guides)
add_custom_command(OUTPUT ${FINGERTURN_GUIDES}.made
  COMMAND ${CMAKE_COMMAND} -E rm -rf ${FINGERTURN_GUIDES}
  COMMAND fingerturn_guides ${FINGERTURN_GUIDES}
  COMMAND ${CMAKE_COMMAND} -E touch ${FINGERTURN_GUIDES}.made
  DEPENDS fingerturn_guides VERBATIM)
add_custom_target(fingerturn_guides_made DEPENDS ${FINGERTURN_GUIDES}.made)
add_dependencies(fingerturn_program fingerturn_guides_made)
