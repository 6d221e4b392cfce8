#pragma once

#include <sys/time.h>

#include <csignal>
#include <ctime>

namespace latchwork_test {

/// Processor time that a call takes once so many milliseconds by the clock are over: what it takes beyond its time
/// limit, whatever else the machine does meanwhile. The clock interrupts the program, which looks at its own time then.
/// One at a time, in a program of one thread, on POSIX systems.
class ProcessorTime {
 public:
  explicit ProcessorTime(int limit_ms) {
    then_ms = -1;
    std::signal(SIGALRM, [](int) { then_ms = now_ms(); });
    wake_in(limit_ms);
  }
  ProcessorTime(const ProcessorTime&) = delete;
  ProcessorTime& operator=(const ProcessorTime&) = delete;
  ~ProcessorTime() { wake_in(0); }

  /// 0 when the time is not over yet.
  double ms() const {
    const double now = now_ms();
    wake_in(0);
    return then_ms < 0 ? 0 : now - then_ms;
  }

 private:
  static void wake_in(int ms) {
    itimerval timer{};
    timer.it_value.tv_sec = ms / 1000;
    timer.it_value.tv_usec = ms % 1000 * 1000;
    setitimer(ITIMER_REAL, &timer, nullptr);
  }
  static double now_ms() {
    timespec taken{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &taken);
    return 1e3 * static_cast<double>(taken.tv_sec) + 1e-6 * static_cast<double>(taken.tv_nsec);
  }

  static inline volatile double then_ms = -1;  // written where the clock interrupts, in the same thread
};

}  // namespace latchwork_test
