export function TakeInPlace() {
  return <p>...</p>;
}
