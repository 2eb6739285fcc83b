// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <chrono>
#include <memory>
#include <mutex>
#include <thread>

#include "tests/engine/far_side/servers/server.h"

namespace hingepin::sync::samples {

/// A process that passes bytes on to a port of this computer, those of all connections together no faster
/// than a line would: each way has a line of its own.
class SlowLine {
 public:
  SlowLine(int to_port, double bytes_a_second) : port_(freePort()) {
    process_ = ::fork();
    if (process_ == 0) {
      serve(port_, to_port, bytes_a_second);
      ::_exit(1);
    }
    for (int tries = 0; tries < 100; ++tries) {
      const int probe = connected(port_);
      if (probe >= 0) {
        ::close(probe);
        return;
      }
      std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
  }
  ~SlowLine() {
    ::kill(process_, SIGKILL);
    ::waitpid(process_, nullptr, 0);
  }
  SlowLine(const SlowLine&) = delete;
  SlowLine& operator=(const SlowLine&) = delete;
  [[nodiscard]] int port() const { return port_; }

 private:
  using Clock = std::chrono::steady_clock;

  struct Line {
    double bytes_a_second;
    std::mutex mutex{};
    Clock::time_point free_at{};
    void carry(std::size_t bytes) {
      Clock::time_point arrives;
      {
        const std::scoped_lock lock(mutex);
        free_at = std::max(free_at, Clock::now()) + std::chrono::nanoseconds(static_cast<std::int64_t>(
                                                        static_cast<double>(bytes) / bytes_a_second * 1e9));
        arrives = free_at;
      }
      std::this_thread::sleep_until(arrives);
    }
  };

  static sockaddr_in addressOf(int port) {
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    address.sin_port = htons(static_cast<std::uint16_t>(port));
    return address;
  }
  static int connected(int port) {
    const int end = ::socket(AF_INET, SOCK_STREAM, 0);
    const sockaddr_in address = addressOf(port);
    if (::connect(end, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0) return end;
    ::close(end);
    return -1;
  }
  static void pass(int from, int to, Line& line) {
    std::array<char, 16384> bytes{};
    while (true) {
      const ssize_t count = ::read(from, bytes.data(), bytes.size());
      if (count <= 0) break;
      line.carry(static_cast<std::size_t>(count));
      for (ssize_t sent = 0; sent < count;) {
        const ssize_t more =
            ::send(to, bytes.data() + sent, static_cast<std::size_t>(count - sent), MSG_NOSIGNAL);
        if (more <= 0) break;
        sent += more;
      }
    }
    ::shutdown(to, SHUT_WR);
  }
  static void serve(int port, int to_port, double bytes_a_second) {
    const int door = ::socket(AF_INET, SOCK_STREAM, 0);
    const sockaddr_in address = addressOf(port);
    ::bind(door, reinterpret_cast<const sockaddr*>(&address), sizeof address);
    ::listen(door, 64);
    Line up{.bytes_a_second = bytes_a_second};
    Line down{.bytes_a_second = bytes_a_second};
    while (true) {
      const int near = ::accept(door, nullptr, nullptr);
      if (near < 0) return;
      const int far = connected(to_port);
      std::thread([near, far, &up, &down] {
        std::thread back([near, far, &down] { pass(far, near, down); });
        pass(near, far, up);
        back.join();
        ::close(near);
        ::close(far);
      }).detach();
    }
  }

  int port_;
  pid_t process_ = -1;
};

}  // namespace hingepin::sync::samples
