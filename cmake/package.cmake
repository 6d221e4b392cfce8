# Install rules; the package files follow.
install(TARGETS latchwork EXPORT latchwork_targets FILE_SET HEADERS)
