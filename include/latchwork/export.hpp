#pragma once

/// Marks what a shared build exports. Everything else is hidden.
#if defined(__GNUC__)
#define LATCHWORK_API __attribute__((visibility("default")))
#else
#define LATCHWORK_API
#endif
