
void driver_begin() {}
